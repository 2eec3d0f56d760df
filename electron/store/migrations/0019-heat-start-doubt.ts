/**
 * Adds how far a heat's start may be off, in ms; null where nobody knows how long the tap was under way, as in all heats of
 * before. A screen that looks at a heat of another adds it to what it says of its own clock.
 */
export const heatStartDoubt = `
ALTER TABLE heat ADD COLUMN start_doubt_ms REAL CHECK (start_doubt_ms >= 0);
`;
