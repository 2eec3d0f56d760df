/**
 * Bundles that were made and then not saved (the organiser cancelled, or the stick was full). They stay in the log but
 * don't count as shared.
 */
export const unsaved = `
CREATE TABLE export_unsaved (
  export_id INTEGER PRIMARY KEY REFERENCES export_log (id),
  at TEXT NOT NULL
) STRICT;
CREATE TRIGGER export_unsaved_never_updated BEFORE UPDATE ON export_unsaved
BEGIN SELECT RAISE (ABORT, 'that a bundle was not saved stays on record'); END;
CREATE TRIGGER export_unsaved_never_deleted BEFORE DELETE ON export_unsaved
BEGIN SELECT RAISE (ABORT, 'that a bundle was not saved stays on record'); END;
`;
