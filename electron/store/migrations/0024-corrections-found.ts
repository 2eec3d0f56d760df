/**
 * Adds an index of corrections by what they correct: SQLite made one of all attempts each time that somebody asked what
 * stands in the place of an attempt, which every device of a station does after every entry there.
 */
export const correctionsFound = `
CREATE INDEX attempt_by_replaces ON attempt (replaces) WHERE replaces IS NOT NULL;
`;
