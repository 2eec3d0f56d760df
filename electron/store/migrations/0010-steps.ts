/**
 * Steps that say who is who (two records made one, somebody changed, leagues renamed or made one) and imports, each with
 * what every row was before and after, so that it can be undone as long as nothing depends on it. What was seen is never
 * rewritten: a step may only say whose it is, and needs a permit for it, as an erasure does.
 */
export const steps = `
CREATE TABLE step (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  -- Made by the client, so that a retry is known.
  id TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL CHECK (kind IN
    ('joined', 'changed', 'league-renamed', 'leagues-joined', 'roster', 'results', 'past')),
  at TEXT NOT NULL,
  -- Initials; empty where nobody is asked for them.
  done_by TEXT NOT NULL,
  -- The name of the file that was imported; else empty.
  file TEXT NOT NULL,
  -- JSON: how many of each.
  counts TEXT NOT NULL CHECK (json_valid(counts)),
  -- How many rows say what changed: fewer are left once somebody of it is erased.
  row_count INTEGER NOT NULL,
  -- The newest bundle of that moment: a later one may depend on the step.
  newest_export INTEGER NOT NULL,
  undone_at TEXT,
  undone_by TEXT,
  CHECK ((undone_at IS NULL) = (undone_by IS NULL))
) STRICT;
CREATE TRIGGER step_never_deleted BEFORE DELETE ON step
BEGIN SELECT RAISE (ABORT, 'the history of who is who is append-only'); END;
CREATE TRIGGER step_never_updated BEFORE UPDATE ON step
WHEN NEW.seq IS NOT OLD.seq OR NEW.id IS NOT OLD.id OR NEW.kind IS NOT OLD.kind OR NEW.at IS NOT OLD.at
  OR NEW.done_by IS NOT OLD.done_by OR NEW.counts IS NOT OLD.counts OR NEW.row_count IS NOT OLD.row_count
  OR NEW.newest_export IS NOT OLD.newest_export
  OR (OLD.undone_at IS NOT NULL AND (NEW.undone_at IS NOT OLD.undone_at OR NEW.undone_by IS NOT OLD.undone_by))
  OR (NEW.file IS NOT OLD.file AND (NOT EXISTS (SELECT 1 FROM erasing) OR instr(NEW.file, '[…]') = 0))
BEGIN SELECT RAISE (ABORT, 'the history of who is who is append-only'); END;

-- One row that a step added (before is null), took away (after is null) or changed.
CREATE TABLE step_row (
  step_seq INTEGER NOT NULL REFERENCES step (seq),
  position INTEGER NOT NULL,
  place TEXT NOT NULL,
  -- Whom it is about as long as the step stands; null for a league. No key: they may be one with somebody else now.
  athlete_id INTEGER,
  row_key TEXT NOT NULL CHECK (json_valid(row_key)),
  before TEXT CHECK (before IS NULL OR json_valid(before)),
  after TEXT CHECK (after IS NULL OR json_valid(after)),
  PRIMARY KEY (step_seq, position)
) STRICT, WITHOUT ROWID;
CREATE INDEX step_row_by_athlete ON step_row (athlete_id);

-- The permit of a step, for one transaction: its key is never there when that ends, and it ends with the step on record.
CREATE TABLE stepping (
  step_id TEXT PRIMARY KEY,
  never INTEGER NOT NULL DEFAULT 1 REFERENCES never (id) DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;
CREATE TRIGGER stepping_on_record BEFORE DELETE ON stepping
WHEN NOT EXISTS (SELECT 1 FROM step WHERE id = OLD.step_id)
BEGIN SELECT RAISE (ABORT, 'a step ends with its line in the history'); END;
CREATE TRIGGER step_row_never_updated BEFORE UPDATE ON step_row
BEGIN SELECT RAISE (ABORT, 'the history of who is who is append-only'); END;
CREATE TRIGGER step_row_never_deleted BEFORE DELETE ON step_row
WHEN NOT EXISTS (SELECT 1 FROM erasing) AND NOT EXISTS (SELECT 1 FROM stepping)
  AND (OLD.athlete_id IS NULL OR EXISTS (SELECT 1 FROM athlete WHERE id = OLD.athlete_id))
BEGIN SELECT RAISE (ABORT, 'the history of who is who is append-only'); END;

-- The guards of before, with one more way past them: a step changes whose a row is, and nothing else of it.
DROP TRIGGER attempt_never_updated;
CREATE TRIGGER attempt_never_updated BEFORE UPDATE ON attempt
WHEN (NOT EXISTS (SELECT 1 FROM erasing) AND NOT EXISTS (SELECT 1 FROM stepping))
  OR NEW.seq IS NOT OLD.seq OR NEW.id IS NOT OLD.id OR NEW.day_id IS NOT OLD.day_id
  OR NEW.test IS NOT OLD.test OR NEW.variant IS NOT OLD.variant
  OR NEW.slot IS NOT OLD.slot OR NEW.seen IS NOT OLD.seen OR NEW.entered_by IS NOT OLD.entered_by
  OR NEW.source IS NOT OLD.source OR NEW.at IS NOT OLD.at
  OR NEW.heat_id IS NOT OLD.heat_id OR NEW.result IS NOT OLD.result
  OR (NEW.athlete_id IS NOT OLD.athlete_id AND NOT EXISTS (SELECT 1 FROM stepping))
  OR (NEW.note IS NOT OLD.note AND (NOT EXISTS (SELECT 1 FROM erasing) OR instr(NEW.note, '[…]') = 0))
  OR (NEW.replaces IS NOT OLD.replaces AND (NEW.replaces IS NOT NULL OR OLD.replaces NOT IN
    (SELECT id FROM attempt WHERE athlete_id IN (SELECT athlete_id FROM erasing))))
BEGIN SELECT RAISE (ABORT, 'attempts are append-only: void it and enter a new one'); END;

DROP TRIGGER heat_lane_begun_update;
CREATE TRIGGER heat_lane_begun_update BEFORE UPDATE ON heat_lane
WHEN EXISTS (SELECT 1 FROM heat_event WHERE heat_id = OLD.heat_id AND lane = OLD.lane)
  AND (NOT EXISTS (SELECT 1 FROM stepping) OR NEW.heat_id IS NOT OLD.heat_id OR NEW.lane IS NOT OLD.lane
    OR NEW.day_id IS NOT OLD.day_id OR NEW.variant IS NOT OLD.variant)
BEGIN SELECT RAISE (ABORT, 'a lane that has begun keeps its athlete'); END;

DROP TRIGGER past_void_never_updated;
CREATE TRIGGER past_void_never_updated BEFORE UPDATE ON past_void
WHEN (NOT EXISTS (SELECT 1 FROM erasing) AND NOT EXISTS (SELECT 1 FROM stepping))
  OR NEW.id IS NOT OLD.id OR NEW.fingerprint IS NOT OLD.fingerprint
  OR NEW.date IS NOT OLD.date OR NEW.test IS NOT OLD.test OR NEW.variant IS NOT OLD.variant
  OR NEW.value IS NOT OLD.value OR NEW.instead IS NOT OLD.instead OR NEW.voided_by IS NOT OLD.voided_by
  OR NEW.at IS NOT OLD.at
  OR (NEW.athlete_id IS NOT OLD.athlete_id AND NOT EXISTS (SELECT 1 FROM stepping))
  OR (NEW.reason IS NOT OLD.reason AND (NOT EXISTS (SELECT 1 FROM erasing) OR instr(NEW.reason, '[…]') = 0))
BEGIN SELECT RAISE (ABORT, 'why an earlier result was removed stays on record'); END;

DROP TRIGGER past_mark_deleted_with_reason;
CREATE TRIGGER past_mark_deleted_with_reason BEFORE DELETE ON past_mark
WHEN OLD.athlete_id NOT IN (SELECT athlete_id FROM erasing) AND NOT EXISTS (SELECT 1 FROM stepping)
  AND NOT EXISTS (SELECT 1 FROM past_void WHERE athlete_id = OLD.athlete_id AND fingerprint = OLD.fingerprint
    AND date = OLD.date AND value = OLD.value)
BEGIN SELECT RAISE (ABORT, 'earlier results are append-only: void it and enter a new one'); END;

-- Who was made one with somebody else comes back under their own id when that is undone.
DROP TRIGGER athlete_id_once;
CREATE TRIGGER athlete_id_once AFTER INSERT ON athlete
WHEN NEW.id <= (SELECT id FROM athlete_highest) AND NOT EXISTS (SELECT 1 FROM stepping)
BEGIN SELECT RAISE (ABORT, 'an athlete''s id is given once'); END;
`;
