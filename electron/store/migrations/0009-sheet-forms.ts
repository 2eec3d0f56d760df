/** How sheets of one form were read last: of a form only a hash of its headers is kept, of a choice only columns. */
export const sheetForms = `
CREATE TABLE sheet_form (
  -- SHA-256 of the kind of sheet and its headers: headers chosen by mistake may be a person's row.
  form TEXT PRIMARY KEY CHECK (length(form) = 64),
  -- JSON: field → column, from 0.
  columns TEXT NOT NULL CHECK (json_valid(columns))
) STRICT, WITHOUT ROWID;
`;
