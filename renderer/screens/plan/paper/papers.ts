export const papers = ["a4", "letter"] as const;
export type PlanPaper = (typeof papers)[number];
