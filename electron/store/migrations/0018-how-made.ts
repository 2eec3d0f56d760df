/**
 * Adds how a mark was made besides its rules: its position among the tests that the athlete did that day, and the whole
 * minutes since the test before. Null where nobody knows, as for what a sheet brought.
 */
export const howMade = `
ALTER TABLE mark ADD COLUMN position INTEGER CHECK (position > 0);
ALTER TABLE mark ADD COLUMN rest_minutes INTEGER CHECK (rest_minutes >= 0);
`;
