export const papers = ["a4", "letter"] as const;
export type SummaryPaper = (typeof papers)[number];
