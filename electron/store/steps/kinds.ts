export const identityKinds = ["joined", "changed", "league-renamed", "leagues-joined"] as const;
export const importKinds = ["roster", "results", "past"] as const;
export type StepKind = (typeof identityKinds)[number] | (typeof importKinds)[number];
