/**
 * Adds the initials of whoever gathered a heat; empty for the heats of before. What a page notes is gone once the whole
 * program was killed, and then the first key of a heat that runs must not end in a question.
 */
export const heatGatherer = `
ALTER TABLE heat ADD COLUMN gathered_by TEXT NOT NULL DEFAULT '';
`;
