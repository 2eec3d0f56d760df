/** The papers that a summary is laid out for. */
export const papers = ["a4", "letter"] as const;
export type SummaryPaper = (typeof papers)[number];
