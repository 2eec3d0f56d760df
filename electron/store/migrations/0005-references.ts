/** Bundles from elsewhere to compare with: their origins, and their marks as bounds, apart from everybody here. */
export const references = `
CREATE TABLE reference (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  -- What the organiser calls the place it is from.
  origin TEXT NOT NULL CHECK (origin <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('marks', 'profiles')),
  -- Of the whole file, and of all that is in it: known again in a zip that was packed anew.
  sha256 TEXT NOT NULL UNIQUE,
  content_sha256 TEXT NOT NULL UNIQUE,
  added_at TEXT NOT NULL
) STRICT;

-- The rules of each way of doing a test in that bundle.
CREATE TABLE reference_test (
  reference_id INTEGER NOT NULL REFERENCES reference (id) ON DELETE CASCADE,
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  variant TEXT NOT NULL,
  fingerprint TEXT NOT NULL,
  PRIMARY KEY (reference_id, test, variant)
) STRICT, WITHOUT ROWID;
CREATE INDEX reference_test_by_rules ON reference_test (fingerprint, reference_id);

-- Marks that are told alike: how many, and their bounds in grains (low included, high not; null: not told).
CREATE TABLE reference_mark (
  id INTEGER PRIMARY KEY,
  reference_id INTEGER NOT NULL,
  test TEXT NOT NULL,
  variant TEXT NOT NULL,
  category TEXT NOT NULL CHECK (category IN ('women', 'men', 'open', 'unknown', 'not told')),
  age_band TEXT NOT NULL,
  quarter TEXT NOT NULL,
  low INTEGER,
  high INTEGER,
  marks INTEGER NOT NULL CHECK (marks > 0),
  CHECK (low IS NOT NULL OR high IS NOT NULL),
  CHECK (low IS NULL OR high IS NULL OR low < high),
  FOREIGN KEY (reference_id, test, variant) REFERENCES reference_test (reference_id, test, variant) ON DELETE CASCADE
) STRICT;
CREATE INDEX reference_mark_by_test ON reference_mark (reference_id, test, variant, category);
`;
