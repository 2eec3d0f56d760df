/**
 * Earlier results that no longer count, and what took their place: `past_mark` holds those that stand, and none leaves it
 * without a line here that says who removed it, when and why.
 */
export const pastVoid = `
CREATE TABLE past_void (
  -- Made by the client, so that a retry is known.
  id TEXT PRIMARY KEY,
  athlete_id INTEGER NOT NULL REFERENCES athlete (id),
  fingerprint TEXT NOT NULL,
  date TEXT NOT NULL,
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  variant TEXT NOT NULL,
  -- In the test's grains, as are those that took its place; null where nothing did.
  value INTEGER NOT NULL,
  instead INTEGER,
  reason TEXT NOT NULL CHECK (reason <> ''),
  voided_by TEXT NOT NULL CHECK (voided_by <> ''),
  at TEXT NOT NULL
) STRICT;
CREATE INDEX past_void_by_athlete ON past_void (athlete_id, at);
CREATE TRIGGER past_void_never_updated BEFORE UPDATE ON past_void
WHEN NOT EXISTS (SELECT 1 FROM erasing) OR NEW.id IS NOT OLD.id OR NEW.fingerprint IS NOT OLD.fingerprint
  OR NEW.date IS NOT OLD.date OR NEW.test IS NOT OLD.test OR NEW.variant IS NOT OLD.variant
  OR NEW.value IS NOT OLD.value OR NEW.instead IS NOT OLD.instead OR NEW.voided_by IS NOT OLD.voided_by
  OR NEW.at IS NOT OLD.at OR instr(NEW.reason, '[…]') = 0
BEGIN SELECT RAISE (ABORT, 'why an earlier result was removed stays on record'); END;
CREATE TRIGGER past_void_never_deleted BEFORE DELETE ON past_void
WHEN OLD.athlete_id NOT IN (SELECT athlete_id FROM erasing)
BEGIN SELECT RAISE (ABORT, 'why an earlier result was removed stays on record'); END;
CREATE TRIGGER past_mark_never_updated BEFORE UPDATE OF fingerprint, date, test, variant, value ON past_mark
BEGIN SELECT RAISE (ABORT, 'earlier results are append-only: void it and enter a new one'); END;
CREATE TRIGGER past_mark_deleted_with_reason BEFORE DELETE ON past_mark
WHEN OLD.athlete_id NOT IN (SELECT athlete_id FROM erasing) AND NOT EXISTS (SELECT 1 FROM past_void
  WHERE athlete_id = OLD.athlete_id AND fingerprint = OLD.fingerprint AND date = OLD.date AND value = OLD.value)
BEGIN SELECT RAISE (ABORT, 'earlier results are append-only: void it and enter a new one'); END;
`;
