export const papers = ["a4", "letter"] as const;
export type StudyPaper = (typeof papers)[number];
