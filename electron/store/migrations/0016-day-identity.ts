/**
 * Adds what tells a day from every other one, also from another laptop's with the same number and date: a device sends what
 * it keeps to no other. Days of before keep the words by which devices told them.
 */
export const dayIdentity = `
ALTER TABLE day ADD COLUMN identity TEXT NOT NULL DEFAULT '';
UPDATE day SET identity = id || ' ' || date;
`;
