/**
 * Erasing a person. Attempts are append-only, so erasure needs a permit, which guards itself. A row of `erasing` names
 * the one athlete whose rows may be deleted. No transaction can end with it: its foreign key, checked at the commit,
 * refers to a table that never has a row. It can be removed only once the athlete is gone, and that writes the audit
 * line. So the permit erases a whole person, once and on record, or nothing at all.
 */
export const erasure = `
-- That somebody was erased, when and by whom; never whom.
CREATE TABLE erasure (
  -- Made by the client, so that a retry is known.
  id TEXT PRIMARY KEY,
  at TEXT NOT NULL,
  erased_by TEXT NOT NULL CHECK (erased_by <> ''),
  -- 1 once the file was written anew, so that no page of it holds what was erased.
  wiped INTEGER NOT NULL CHECK (wiped IN (0, 1))
) STRICT, WITHOUT ROWID;
CREATE TRIGGER erasure_never_deleted BEFORE DELETE ON erasure
BEGIN SELECT RAISE (ABORT, 'that somebody was erased stays on record'); END;
CREATE TRIGGER erasure_never_updated BEFORE UPDATE ON erasure
WHEN OLD.wiped = 1 OR NEW.id IS NOT OLD.id OR NEW.at IS NOT OLD.at OR NEW.erased_by IS NOT OLD.erased_by
BEGIN SELECT RAISE (ABORT, 'that somebody was erased stays on record'); END;

CREATE TABLE never (id INTEGER PRIMARY KEY CHECK (0)) STRICT;
CREATE TABLE erasing (
  athlete_id INTEGER PRIMARY KEY REFERENCES athlete (id) DEFERRABLE INITIALLY DEFERRED,
  erasure_id TEXT NOT NULL UNIQUE,
  at TEXT NOT NULL,
  erased_by TEXT NOT NULL CHECK (erased_by <> ''),
  never INTEGER NOT NULL DEFAULT 1 REFERENCES never (id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE TRIGGER erasing_stays BEFORE UPDATE ON erasing
BEGIN SELECT RAISE (ABORT, 'a permit to erase is for one athlete'); END;
CREATE TRIGGER erasing_to_its_end BEFORE DELETE ON erasing
WHEN EXISTS (SELECT 1 FROM athlete WHERE id = OLD.athlete_id)
BEGIN SELECT RAISE (ABORT, 'a permit to erase ends with the athlete gone'); END;
CREATE TRIGGER erasing_told AFTER DELETE ON erasing
BEGIN INSERT INTO erasure VALUES (OLD.erasure_id, OLD.at, OLD.erased_by, 0); END;

-- A mark of somebody erased who had agreed to share: what a bundle may say of it and nothing else. The ids are random,
-- so nothing links two of them, and their order says nothing.
CREATE TABLE nameless_mark (
  id TEXT PRIMARY KEY,
  day_id INTEGER NOT NULL REFERENCES day (id),
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  variant TEXT NOT NULL,
  fingerprint TEXT NOT NULL,
  value INTEGER NOT NULL,
  age_band TEXT NOT NULL,
  category TEXT NOT NULL CHECK (category IN ('women', 'men', 'open', 'unknown'))
) STRICT, WITHOUT ROWID;
CREATE INDEX nameless_mark_by_day ON nameless_mark (day_id, test);
CREATE TRIGGER nameless_mark_never_updated BEFORE UPDATE ON nameless_mark
BEGIN SELECT RAISE (ABORT, 'nameless marks are append-only'); END;
CREATE TRIGGER nameless_mark_never_deleted BEFORE DELETE ON nameless_mark
BEGIN SELECT RAISE (ABORT, 'nameless marks are append-only'); END;

-- The highest id that an athlete ever had when one was deleted: an id is never given twice, so that what a window still
-- sends about somebody who is gone can't reach somebody else.
CREATE TABLE athlete_highest (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  id INTEGER NOT NULL
) STRICT;
INSERT INTO athlete_highest VALUES (1, 0);
CREATE TRIGGER athlete_highest_kept BEFORE DELETE ON athlete
BEGIN UPDATE athlete_highest SET id = max(id, (SELECT max(id) FROM athlete)); END;
CREATE TRIGGER athlete_id_once AFTER INSERT ON athlete
WHEN NEW.id <= (SELECT id FROM athlete_highest)
BEGIN SELECT RAISE (ABORT, 'an athlete''s id is given once'); END;

-- The guards of before, with the one way past them. What others' rows say may only lose the erased name ('[…]' stands
-- in its place) and the reference to an attempt that goes.
DROP TRIGGER attempt_never_updated;
CREATE TRIGGER attempt_never_updated BEFORE UPDATE ON attempt
WHEN NOT EXISTS (SELECT 1 FROM erasing)
  OR NEW.seq IS NOT OLD.seq OR NEW.id IS NOT OLD.id OR NEW.day_id IS NOT OLD.day_id
  OR NEW.athlete_id IS NOT OLD.athlete_id OR NEW.test IS NOT OLD.test OR NEW.variant IS NOT OLD.variant
  OR NEW.slot IS NOT OLD.slot OR NEW.seen IS NOT OLD.seen OR NEW.entered_by IS NOT OLD.entered_by
  OR NEW.source IS NOT OLD.source OR NEW.at IS NOT OLD.at
  OR (NEW.note IS NOT OLD.note AND instr(NEW.note, '[…]') = 0)
  OR (NEW.replaces IS NOT OLD.replaces AND (NEW.replaces IS NOT NULL OR OLD.replaces NOT IN
    (SELECT id FROM attempt WHERE athlete_id IN (SELECT athlete_id FROM erasing))))
BEGIN SELECT RAISE (ABORT, 'attempts are append-only: void it and enter a new one'); END;
DROP TRIGGER attempt_never_deleted;
CREATE TRIGGER attempt_never_deleted BEFORE DELETE ON attempt
WHEN OLD.athlete_id NOT IN (SELECT athlete_id FROM erasing)
BEGIN SELECT RAISE (ABORT, 'attempts are append-only: void it and enter a new one'); END;

DROP TRIGGER void_never_updated;
CREATE TRIGGER void_never_updated BEFORE UPDATE ON void
WHEN NOT EXISTS (SELECT 1 FROM erasing) OR NEW.attempt_id IS NOT OLD.attempt_id
  OR NEW.voided_by IS NOT OLD.voided_by OR NEW.at IS NOT OLD.at OR instr(NEW.reason, '[…]') = 0
BEGIN SELECT RAISE (ABORT, 'voids are append-only'); END;
DROP TRIGGER void_never_deleted;
CREATE TRIGGER void_never_deleted BEFORE DELETE ON void
WHEN NOT EXISTS (SELECT 1 FROM attempt WHERE id = OLD.attempt_id
  AND athlete_id IN (SELECT athlete_id FROM erasing))
BEGIN SELECT RAISE (ABORT, 'voids are append-only'); END;

DROP TRIGGER heat_ended;
CREATE TRIGGER heat_ended BEFORE UPDATE ON heat
WHEN OLD.state = 'ended' AND (NOT EXISTS (SELECT 1 FROM erasing)
  OR NEW.id IS NOT OLD.id OR NEW.day_id IS NOT OLD.day_id OR NEW.test IS NOT OLD.test OR NEW.lanes IS NOT OLD.lanes
  OR NEW.state IS NOT OLD.state OR NEW.gathered_at IS NOT OLD.gathered_at OR NEW.zero_ms IS NOT OLD.zero_ms
  OR NEW.zero_boot IS NOT OLD.zero_boot OR NEW.zero_wall IS NOT OLD.zero_wall OR NEW.ending IS NOT OLD.ending
  OR NEW.ended_by IS NOT OLD.ended_by OR NEW.ended_at IS NOT OLD.ended_at OR instr(NEW.reason, '[…]') = 0)
BEGIN SELECT RAISE (ABORT, 'a heat that has ended stays as it is'); END;

DROP TRIGGER heat_event_never_updated;
CREATE TRIGGER heat_event_never_updated BEFORE UPDATE ON heat_event
WHEN NOT EXISTS (SELECT 1 FROM erasing) OR NEW.seq IS NOT OLD.seq OR NEW.id IS NOT OLD.id
  OR NEW.heat_id IS NOT OLD.heat_id OR NEW.lane IS NOT OLD.lane OR NEW.kind IS NOT OLD.kind
  OR NEW.at_ms IS NOT OLD.at_ms OR NEW.tapped_by IS NOT OLD.tapped_by OR NEW.at IS NOT OLD.at
  OR instr(NEW.detail, '[…]') = 0
BEGIN SELECT RAISE (ABORT, 'taps are append-only: take one back with another'); END;
DROP TRIGGER heat_event_never_deleted;
CREATE TRIGGER heat_event_never_deleted BEFORE DELETE ON heat_event
WHEN NOT EXISTS (SELECT 1 FROM heat_lane WHERE heat_id = OLD.heat_id AND lane = OLD.lane
  AND athlete_id IN (SELECT athlete_id FROM erasing))
BEGIN SELECT RAISE (ABORT, 'taps are append-only: take one back with another'); END;
`;
