/**
 * The first schema: leagues and athletes, days with their frozen protocols, entrants, attempts as seen (append-only),
 * and marks (derived, with the version of the rules that made them).
 */
export const first = `
CREATE TABLE league (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  folded TEXT NOT NULL UNIQUE
) STRICT;

CREATE TABLE athlete (
  id INTEGER PRIMARY KEY,
  league_id INTEGER NOT NULL REFERENCES league (id),
  name TEXT NOT NULL CHECK (name <> ''),
  folded TEXT NOT NULL,
  number TEXT NOT NULL CHECK (length(number) <= 4 AND number NOT GLOB '*[^0-9]*'),
  birth_year INTEGER CHECK (birth_year BETWEEN 1900 AND 2100),
  category TEXT CHECK (category IN ('women', 'men', 'open')),
  guardian_consent INTEGER NOT NULL CHECK (guardian_consent IN (0, 1)),
  board TEXT NOT NULL CHECK (board IN ('name', 'bib', 'hidden')),
  share INTEGER NOT NULL CHECK (share IN (0, 1)),
  -- 1 once the athlete answered at the table: a sheet never loosens or tightens that answer afterwards.
  asked INTEGER NOT NULL CHECK (asked IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX athlete_by_number ON athlete (league_id, number) WHERE number <> '';
CREATE UNIQUE INDEX athlete_by_name ON athlete (league_id, folded) WHERE number = '';

CREATE TABLE day (
  id INTEGER PRIMARY KEY,
  date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  title TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('planned', 'open', 'closed')),
  rest_minutes INTEGER NOT NULL CHECK (rest_minutes BETWEEN 0 AND 60)
) STRICT;
-- One day at a time is being prepared or held.
CREATE UNIQUE INDEX day_at_hand ON day ((1)) WHERE state <> 'closed';

CREATE TABLE day_protocol (
  day_id INTEGER NOT NULL REFERENCES day (id),
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  parameters TEXT NOT NULL CHECK (json_valid(parameters)),
  PRIMARY KEY (day_id, test)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER day_protocol_frozen_update BEFORE UPDATE ON day_protocol
WHEN (SELECT state FROM day WHERE id = OLD.day_id) <> 'planned'
BEGIN SELECT RAISE (ABORT, 'a protocol is frozen when its day opens'); END;
CREATE TRIGGER day_protocol_frozen_delete BEFORE DELETE ON day_protocol
WHEN (SELECT state FROM day WHERE id = OLD.day_id) <> 'planned'
BEGIN SELECT RAISE (ABORT, 'a protocol is frozen when its day opens'); END;

CREATE TABLE entrant (
  day_id INTEGER NOT NULL REFERENCES day (id),
  athlete_id INTEGER NOT NULL REFERENCES athlete (id),
  state TEXT NOT NULL CHECK (state IN ('expected', 'testing', 'not-testing', 'no-show', 'withdrawn')),
  bib INTEGER CHECK (bib BETWEEN 1 AND 9999),
  since TEXT NOT NULL,
  PRIMARY KEY (day_id, athlete_id),
  CHECK (state <> 'testing' OR bib IS NOT NULL)
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX entrant_by_bib ON entrant (day_id, bib) WHERE bib IS NOT NULL;

-- A test that somebody does not take: decided at check-in (no reason is kept: it would be health data) or skipped later.
CREATE TABLE left_out (
  day_id INTEGER NOT NULL,
  athlete_id INTEGER NOT NULL,
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  kind TEXT NOT NULL CHECK (kind IN ('readiness', 'skip')),
  reason TEXT NOT NULL CHECK (kind = 'readiness' OR reason <> ''),
  decided_by TEXT NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (day_id, athlete_id, test),
  FOREIGN KEY (day_id, athlete_id) REFERENCES entrant (day_id, athlete_id)
) STRICT, WITHOUT ROWID;

-- Who is called to which station now; one call an athlete.
CREATE TABLE call (
  day_id INTEGER NOT NULL,
  athlete_id INTEGER NOT NULL,
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  at TEXT NOT NULL,
  PRIMARY KEY (day_id, athlete_id),
  FOREIGN KEY (day_id, athlete_id) REFERENCES entrant (day_id, athlete_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE attempt (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  id TEXT NOT NULL UNIQUE,
  day_id INTEGER NOT NULL,
  athlete_id INTEGER NOT NULL,
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  variant TEXT NOT NULL,
  slot TEXT NOT NULL,
  seen TEXT NOT NULL CHECK (json_valid(seen)),
  entered_by TEXT NOT NULL,
  note TEXT NOT NULL,
  source TEXT NOT NULL CHECK (source IN ('station', 'sheet', 'heat')),
  at TEXT NOT NULL,
  replaces TEXT REFERENCES attempt (id),
  FOREIGN KEY (day_id, athlete_id) REFERENCES entrant (day_id, athlete_id)
) STRICT;
CREATE INDEX attempt_by_athlete ON attempt (athlete_id, day_id, test, variant);
CREATE INDEX attempt_by_test ON attempt (day_id, test, seq);
CREATE TRIGGER attempt_never_updated BEFORE UPDATE ON attempt
BEGIN SELECT RAISE (ABORT, 'attempts are append-only: void it and enter a new one'); END;
CREATE TRIGGER attempt_never_deleted BEFORE DELETE ON attempt
BEGIN SELECT RAISE (ABORT, 'attempts are append-only: void it and enter a new one'); END;

CREATE TABLE void (
  attempt_id TEXT PRIMARY KEY REFERENCES attempt (id),
  reason TEXT NOT NULL CHECK (reason <> ''),
  voided_by TEXT NOT NULL,
  at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TRIGGER void_never_updated BEFORE UPDATE ON void
BEGIN SELECT RAISE (ABORT, 'voids are append-only'); END;
CREATE TRIGGER void_never_deleted BEFORE DELETE ON void
BEGIN SELECT RAISE (ABORT, 'voids are append-only'); END;

-- Derived from the attempts that stand, in the same transaction; rebuilt by one call and never the truth.
CREATE TABLE mark (
  athlete_id INTEGER NOT NULL,
  test TEXT NOT NULL,
  variant TEXT NOT NULL,
  day_id INTEGER NOT NULL,
  fingerprint TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('complete', 'incomplete', 'unfinished')),
  value INTEGER,
  detail TEXT NOT NULL CHECK (json_valid(detail)),
  seq INTEGER NOT NULL,
  rules INTEGER NOT NULL,
  PRIMARY KEY (athlete_id, test, variant, day_id),
  FOREIGN KEY (day_id, athlete_id) REFERENCES entrant (day_id, athlete_id),
  CHECK ((state = 'complete') = (value IS NOT NULL))
) STRICT, WITHOUT ROWID;
CREATE INDEX mark_by_day ON mark (day_id, test);

-- Marks of tests from before this program, or from elsewhere.
CREATE TABLE past_mark (
  athlete_id INTEGER NOT NULL REFERENCES athlete (id),
  fingerprint TEXT NOT NULL,
  date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  variant TEXT NOT NULL,
  value INTEGER NOT NULL,
  PRIMARY KEY (athlete_id, fingerprint, date)
) STRICT, WITHOUT ROWID;

-- What left the room, and when; never the rows.
CREATE TABLE export_log (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL,
  day_id INTEGER NOT NULL REFERENCES day (id),
  k INTEGER NOT NULL,
  sha256 TEXT NOT NULL
) STRICT;
`;
