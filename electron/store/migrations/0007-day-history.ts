/**
 * What became of a day, and when: its ages are judged by the calendar day on which it was opened, and who opened it again
 * after it was closed stays on record. A planned day can be thrown away; its id is not given again.
 */
export const dayHistory = `
CREATE TABLE day_event (
  -- Made by the client where a person is named, so that a retry is known.
  id TEXT PRIMARY KEY,
  day_id INTEGER NOT NULL REFERENCES day (id),
  kind TEXT NOT NULL CHECK (kind IN ('opened', 'closed', 'reopened')),
  at TEXT NOT NULL,
  -- The hall's calendar day of that moment.
  on_date TEXT NOT NULL CHECK (on_date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  -- Initials, and why; empty for opening and closing, which nobody has to explain.
  done_by TEXT NOT NULL,
  reason TEXT NOT NULL,
  CHECK (kind <> 'reopened' OR (done_by <> '' AND reason <> ''))
) STRICT;
CREATE INDEX day_event_by_day ON day_event (day_id, at);
CREATE TRIGGER day_event_never_updated BEFORE UPDATE ON day_event
WHEN NOT EXISTS (SELECT 1 FROM erasing) OR NEW.id IS NOT OLD.id OR NEW.day_id IS NOT OLD.day_id
  OR NEW.kind IS NOT OLD.kind OR NEW.at IS NOT OLD.at OR NEW.on_date IS NOT OLD.on_date
  OR NEW.done_by IS NOT OLD.done_by OR instr(NEW.reason, '[…]') = 0
BEGIN SELECT RAISE (ABORT, 'the history of a day is append-only'); END;
CREATE TRIGGER day_event_never_deleted BEFORE DELETE ON day_event
BEGIN SELECT RAISE (ABORT, 'the history of a day is append-only'); END;

-- Planned days that were thrown away, by their ids alone: what a window still sends about one reaches no other.
CREATE TABLE discarded_day (
  day_id INTEGER PRIMARY KEY,
  at TEXT NOT NULL
) STRICT;
CREATE TRIGGER day_only_planned_deleted BEFORE DELETE ON day
WHEN OLD.state <> 'planned'
BEGIN SELECT RAISE (ABORT, 'a day that was opened is not deleted'); END;
CREATE TRIGGER day_id_once AFTER INSERT ON day
WHEN EXISTS (SELECT 1 FROM discarded_day WHERE day_id = NEW.id)
BEGIN SELECT RAISE (ABORT, 'the id of a day is given once'); END;
`;
