/**
 * Adds the heat that an attempt belongs to as a key. Before, only the attempt's id said it:
 * `heat.<heat>.<lane>.<result>.<count>`. A key of two columns can't be added to a table, so the table is rebuilt; all
 * keys are checked at the commit, when every row is back.
 */
export const heatOfAttempt = `
PRAGMA defer_foreign_keys = ON;
CREATE TABLE attempt_before AS SELECT * FROM attempt;
CREATE INDEX attempt_before_by_id ON attempt_before (id);
CREATE INDEX attempt_before_by_replaces ON attempt_before (replaces);
CREATE TABLE attempt_sequence AS SELECT name, seq FROM sqlite_sequence WHERE name = 'attempt';
DROP TABLE attempt;

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
  -- The heat that entered it, or that entered what it corrects of the same athlete. Their lane there says which one.
  heat_id TEXT,
  -- Which result of the lane the heat entered it for; null for what people entered.
  result TEXT,
  FOREIGN KEY (day_id, athlete_id) REFERENCES entrant (day_id, athlete_id),
  FOREIGN KEY (heat_id, athlete_id) REFERENCES heat_lane (heat_id, athlete_id),
  CHECK (result IS NULL OR (heat_id IS NOT NULL AND source = 'heat'))
) STRICT;

WITH RECURSIVE
  named AS (
    SELECT id, athlete_id, substr(id, 6, instr(substr(id, 6), '.') - 1) AS heat_id FROM attempt_before
    WHERE source = 'heat' AND substr(id, 1, 5) = 'heat.'),
  entered AS (
    SELECT named.id, athlete_id, heat_id, substr(named.id, length('heat.' || heat_id || '.' || lane || '.') + 1) AS rest
    FROM named JOIN heat_lane USING (heat_id, athlete_id)
    WHERE instr(named.id, 'heat.' || heat_id || '.' || lane || '.') = 1),
  -- With its corrections, as long as they are the same athlete's.
  of_heat (id, athlete_id, heat_id) AS (
    SELECT id, athlete_id, heat_id FROM entered
    UNION SELECT attempt_before.id, of_heat.athlete_id, of_heat.heat_id FROM of_heat
      JOIN attempt_before ON attempt_before.replaces = of_heat.id
      WHERE attempt_before.athlete_id = of_heat.athlete_id)
INSERT INTO attempt
SELECT attempt_before.*, of_heat.heat_id, substr(entered.rest, 1, instr(entered.rest || '.', '.') - 1)
FROM attempt_before LEFT JOIN of_heat USING (id) LEFT JOIN entered USING (id) ORDER BY attempt_before.seq;

-- Numbers that were given once and are gone (with an erasure) are not given again.
DELETE FROM sqlite_sequence WHERE name = 'attempt';
INSERT INTO sqlite_sequence (name, seq) SELECT name, seq FROM attempt_sequence;
DROP TABLE attempt_sequence;
DROP TABLE attempt_before;

-- As before, and over the new columns.
CREATE INDEX attempt_by_athlete ON attempt (athlete_id, day_id, test, variant);
CREATE INDEX attempt_by_test ON attempt (day_id, test, seq);
CREATE TRIGGER attempt_never_updated BEFORE UPDATE ON attempt
WHEN NOT EXISTS (SELECT 1 FROM erasing)
  OR NEW.seq IS NOT OLD.seq OR NEW.id IS NOT OLD.id OR NEW.day_id IS NOT OLD.day_id
  OR NEW.athlete_id IS NOT OLD.athlete_id OR NEW.test IS NOT OLD.test OR NEW.variant IS NOT OLD.variant
  OR NEW.slot IS NOT OLD.slot OR NEW.seen IS NOT OLD.seen OR NEW.entered_by IS NOT OLD.entered_by
  OR NEW.source IS NOT OLD.source OR NEW.at IS NOT OLD.at
  OR NEW.heat_id IS NOT OLD.heat_id OR NEW.result IS NOT OLD.result
  OR (NEW.note IS NOT OLD.note AND instr(NEW.note, '[…]') = 0)
  OR (NEW.replaces IS NOT OLD.replaces AND (NEW.replaces IS NOT NULL OR OLD.replaces NOT IN
    (SELECT id FROM attempt WHERE athlete_id IN (SELECT athlete_id FROM erasing))))
BEGIN SELECT RAISE (ABORT, 'attempts are append-only: void it and enter a new one'); END;
CREATE TRIGGER attempt_never_deleted BEFORE DELETE ON attempt
WHEN OLD.athlete_id NOT IN (SELECT athlete_id FROM erasing)
BEGIN SELECT RAISE (ABORT, 'attempts are append-only: void it and enter a new one'); END;
`;
