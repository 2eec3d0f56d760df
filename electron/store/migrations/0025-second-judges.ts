/** Lets a device have the place of whoever judges a test a second time, for a measuring study. */
export const secondJudges = `
CREATE TABLE device_anew (
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  day_id INTEGER NOT NULL REFERENCES day (id) ON DELETE CASCADE,
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 40),
  role TEXT NOT NULL CHECK (role IN ('check-in', 'station', 'second-judge', 'board')),
  test TEXT CHECK ((test IS NOT NULL) = (role IN ('station', 'second-judge'))),
  -- SHA-256 of the token that the device holds; the token itself is nowhere here.
  token_hash TEXT NOT NULL UNIQUE CHECK (length(token_hash) = 64),
  joined_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO device_anew (id, day_id, name, role, test, token_hash, joined_at)
  SELECT id, day_id, name, role, test, token_hash, joined_at FROM device;
DROP TABLE device;
ALTER TABLE device_anew RENAME TO device;
`;
