/**
 * Bundles that were made and then not saved (the organiser changed their mind, or the stick was full): they stay in the
 * log, and do not count as having left.
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
