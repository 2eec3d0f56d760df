/**
 * Measuring studies: how well two judges, or two visits, agree. Readings are kept apart from attempts and marks, so that
 * nobody's result can change by them. The newest reading of an athlete in a series counts; one without a value takes
 * away the one before.
 */
export const studies = `
CREATE TABLE study (
  -- Made by the client, so that a retry is known.
  id TEXT PRIMARY KEY CHECK (length(id) = 36),
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  variant TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('judges', 'visits')),
  -- The day whose bibs its sheets mean; null for attempts of no day of this program.
  day_id INTEGER REFERENCES day (id),
  -- How many athletes it wants.
  aim INTEGER NOT NULL CHECK (aim BETWEEN 3 AND 1000),
  planned_by TEXT NOT NULL CHECK (planned_by <> ''),
  at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE study_series (
  study_id TEXT NOT NULL REFERENCES study (id),
  position INTEGER NOT NULL CHECK (position BETWEEN 1 AND 4),
  -- The day whose marks are its readings; null where readings are brought.
  day_id INTEGER REFERENCES day (id),
  -- Initials of who reads; empty for a day's marks and for visits.
  judge TEXT NOT NULL,
  -- Of a visit, ISO 8601.
  date TEXT,
  PRIMARY KEY (study_id, position)
) STRICT, WITHOUT ROWID;
CREATE TABLE study_reading (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  -- Made by the client or from the sheet's row, so that a retry is known.
  id TEXT NOT NULL UNIQUE CHECK (length(id) = 36),
  study_id TEXT NOT NULL,
  position INTEGER NOT NULL,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id),
  -- In the test's grains; null takes away the reading before.
  value INTEGER CHECK (value >= 0),
  source TEXT NOT NULL CHECK (source IN ('sheet', 'keyed')),
  entered_by TEXT NOT NULL CHECK (entered_by <> ''),
  -- Why the reading before does not count; empty for a first one.
  reason TEXT NOT NULL,
  at TEXT NOT NULL,
  CHECK (value IS NOT NULL OR reason <> ''),
  FOREIGN KEY (study_id, position) REFERENCES study_series (study_id, position)
) STRICT;
CREATE INDEX study_reading_by_series ON study_reading (study_id, position, athlete_id, seq);
CREATE INDEX study_reading_by_athlete ON study_reading (athlete_id);
CREATE TRIGGER study_reading_corrected BEFORE INSERT ON study_reading
WHEN NEW.reason = '' AND (SELECT value FROM study_reading WHERE study_id = NEW.study_id AND position = NEW.position
  AND athlete_id = NEW.athlete_id ORDER BY seq DESC LIMIT 1) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'a reading is corrected with a reason'); END;
CREATE TRIGGER study_reading_never_updated BEFORE UPDATE ON study_reading
WHEN (NOT EXISTS (SELECT 1 FROM erasing) AND NOT EXISTS (SELECT 1 FROM stepping))
  OR NEW.seq IS NOT OLD.seq OR NEW.id IS NOT OLD.id OR NEW.study_id IS NOT OLD.study_id
  OR NEW.position IS NOT OLD.position OR NEW.value IS NOT OLD.value OR NEW.source IS NOT OLD.source
  OR NEW.entered_by IS NOT OLD.entered_by OR NEW.at IS NOT OLD.at
  OR (NEW.athlete_id IS NOT OLD.athlete_id AND NOT EXISTS (SELECT 1 FROM stepping))
  OR (NEW.reason IS NOT OLD.reason AND (NOT EXISTS (SELECT 1 FROM erasing) OR instr(NEW.reason, '[…]') = 0))
BEGIN SELECT RAISE (ABORT, 'readings are append-only: enter a new one'); END;
CREATE TRIGGER study_reading_never_deleted BEFORE DELETE ON study_reading
WHEN OLD.athlete_id NOT IN (SELECT athlete_id FROM erasing)
BEGIN SELECT RAISE (ABORT, 'readings are append-only: enter a new one'); END;
CREATE TRIGGER study_never_updated BEFORE UPDATE ON study
BEGIN SELECT RAISE (ABORT, 'a study stays as it was planned'); END;
CREATE TRIGGER study_series_never_updated BEFORE UPDATE ON study_series
BEGIN SELECT RAISE (ABORT, 'a study stays as it was planned'); END;
`;
