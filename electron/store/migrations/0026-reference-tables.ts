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

-- What a table says of one test and variant by one set of rules: one value with all its groups and their percentiles, since
-- thousands of them as rows of their own would keep entries waiting.
CREATE TABLE reference_rules (
  table_id INTEGER NOT NULL REFERENCES reference_table (id) ON DELETE CASCADE,
  fingerprint TEXT NOT NULL,
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  variant TEXT NOT NULL,
  -- Of the largest group, and of the one with the most halls; the number of groups; from when on and until when.
  marks INTEGER NOT NULL CHECK (marks > 0),
  halls INTEGER NOT NULL CHECK (halls > 0),
  groups INTEGER NOT NULL CHECK (groups > 0),
  first_quarter TEXT NOT NULL,
  last_quarter TEXT NOT NULL,
  -- JSON, as electron/domain/reference-table/packed.ts packs it.
  told TEXT NOT NULL,
  PRIMARY KEY (fingerprint, table_id)
) STRICT;
CREATE INDEX reference_rules_by_table ON reference_rules (table_id);

-- Which bundles that were brought in by themselves are in a table too.
CREATE TABLE reference_in_table (
  reference_id INTEGER NOT NULL REFERENCES reference (id) ON DELETE CASCADE,
  table_id INTEGER NOT NULL REFERENCES reference_table (id) ON DELETE CASCADE,
  PRIMARY KEY (reference_id, table_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX reference_in_table_by_table ON reference_in_table (table_id);
`;
