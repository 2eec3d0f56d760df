/**
 * Devices that joined the table on one day. They lie in the store so that they come back with its backup: a device knows
 * the table again on another laptop, and the table knows the device. They go with their day.
 */
export const devices = `
CREATE TABLE device (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  day_id INTEGER NOT NULL REFERENCES day (id) ON DELETE CASCADE,
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 40),
  role TEXT NOT NULL CHECK (role IN ('check-in', 'station', 'board')),
  test TEXT CHECK ((test IS NOT NULL) = (role = 'station')),
  -- SHA-256 of the token that the device holds; the token itself is nowhere here.
  token_hash TEXT NOT NULL UNIQUE CHECK (length(token_hash) = 64),
  joined_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
`;
