/** Reference tables from elsewhere, and the keys of those who publish them. No row of it is about anybody here. */
export const referenceTables = `
-- Who publishes tables, by the key they sign with: remembered when none of their tables is held any more, so that a later
-- one with another key under that name is noticed.
CREATE TABLE publisher (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  -- As it stands in their newest table, and the same folded, by which names are told apart.
  name TEXT NOT NULL CHECK (name <> ''),
  folded_name TEXT NOT NULL UNIQUE CHECK (folded_name <> ''),
  -- Ed25519, 32 bytes, base64url.
  public_key TEXT NOT NULL UNIQUE CHECK (length(public_key) = 43),
  known_since TEXT NOT NULL
) STRICT;

-- One table of each publisher: a newer one takes its place.
CREATE TABLE reference_table (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  publisher_id INTEGER NOT NULL UNIQUE REFERENCES publisher (id) ON DELETE CASCADE,
  -- Of what is signed, which has the hashes of all else in it: known again in a zip that was packed anew.
  sha256 TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64),
  made TEXT NOT NULL,
  valid_until TEXT NOT NULL CHECK (valid_until >= made),
  -- Content hashes of the bundles in it: 32 bytes each, sorted, one after the other. As rows of their own, twenty thousand
  -- of them would keep entries waiting.
  bundles BLOB NOT NULL CHECK (length(bundles) % 32 = 0),
  added_at TEXT NOT NULL
) STRICT;

-- Marks by one set of rules, of one category and age band or of all.
CREATE TABLE reference_group (
  id INTEGER PRIMARY KEY,
  table_id INTEGER NOT NULL REFERENCES reference_table (id) ON DELETE CASCADE,
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  variant TEXT NOT NULL,
  fingerprint TEXT NOT NULL,
  category TEXT NOT NULL CHECK (category IN ('women', 'men', 'open', 'unknown', 'not told', 'all')),
  age_band TEXT NOT NULL,
  marks INTEGER NOT NULL CHECK (marks > 0),
  halls INTEGER NOT NULL CHECK (halls > 0),
  -- How many independent marks would say as much.
  counts_as INTEGER NOT NULL CHECK (counts_as BETWEEN 1 AND marks),
  first_quarter TEXT NOT NULL,
  last_quarter TEXT NOT NULL,
  -- [[percentile, low, high], …] in grains (low included, high not; null: open), in rising order: always read together.
  percentiles TEXT NOT NULL CHECK (json_valid(percentiles)),
  UNIQUE (table_id, fingerprint, category, age_band)
) STRICT;
CREATE INDEX reference_group_by_rules ON reference_group (fingerprint, category);

-- Which bundles that were brought in by themselves are in a table too.
CREATE TABLE reference_in_table (
  reference_id INTEGER NOT NULL REFERENCES reference (id) ON DELETE CASCADE,
  table_id INTEGER NOT NULL REFERENCES reference_table (id) ON DELETE CASCADE,
  PRIMARY KEY (reference_id, table_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX reference_in_table_by_table ON reference_in_table (table_id);
`;
