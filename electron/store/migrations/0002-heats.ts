/** Live heats with their lanes and taps (append-only), and athletes who were called and did not come. */
export const heats = `
CREATE TABLE heat (
  id TEXT PRIMARY KEY,
  day_id INTEGER NOT NULL REFERENCES day (id),
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  lanes INTEGER NOT NULL CHECK (lanes BETWEEN 1 AND 12),
  state TEXT NOT NULL CHECK (state IN ('gathering', 'running', 'ended')),
  gathered_at TEXT NOT NULL,
  -- Time 0: ms of the monotonic clock, which start of the machine that clock counts from, and wall time for want of it.
  zero_ms REAL,
  zero_boot TEXT,
  zero_wall TEXT,
  -- How it ended: run to its end, or called off, with the reason.
  ending TEXT CHECK (ending IN ('done', 'called-off')),
  reason TEXT NOT NULL,
  ended_by TEXT NOT NULL,
  ended_at TEXT,
  CHECK ((zero_ms IS NULL) = (zero_boot IS NULL) AND (zero_ms IS NULL) = (zero_wall IS NULL)),
  CHECK (state <> 'running' OR zero_ms IS NOT NULL),
  CHECK (state <> 'gathering' OR zero_ms IS NULL),
  CHECK ((state = 'ended') = (ending IS NOT NULL) AND (state = 'ended') = (ended_at IS NOT NULL)),
  CHECK (ending IS NOT 'called-off' OR reason <> '')
) STRICT, WITHOUT ROWID;
-- One heat of a test is gathered or run at a time.
CREATE UNIQUE INDEX heat_live ON heat (day_id, test) WHERE state <> 'ended';
CREATE TRIGGER heat_ended BEFORE UPDATE ON heat WHEN OLD.state = 'ended'
BEGIN SELECT RAISE (ABORT, 'a heat that has ended stays as it is'); END;
CREATE TRIGGER heat_zero BEFORE UPDATE OF zero_ms, zero_boot, zero_wall ON heat WHEN OLD.zero_ms IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'a heat starts once'); END;
CREATE TRIGGER heat_never_deleted BEFORE DELETE ON heat
BEGIN SELECT RAISE (ABORT, 'a heat stays, also one that was called off'); END;

-- Who is in which lane: free to change until the heat (or, at its own pace, the lane) has begun.
CREATE TABLE heat_lane (
  heat_id TEXT NOT NULL REFERENCES heat (id),
  lane INTEGER NOT NULL CHECK (lane BETWEEN 1 AND 12),
  day_id INTEGER NOT NULL,
  athlete_id INTEGER NOT NULL,
  variant TEXT NOT NULL,
  PRIMARY KEY (heat_id, lane),
  UNIQUE (heat_id, athlete_id),
  FOREIGN KEY (day_id, athlete_id) REFERENCES entrant (day_id, athlete_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE heat_event (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  id TEXT NOT NULL UNIQUE,
  heat_id TEXT NOT NULL REFERENCES heat (id),
  -- Null: every lane.
  lane INTEGER,
  kind TEXT NOT NULL,
  at_ms INTEGER NOT NULL,
  detail TEXT NOT NULL CHECK (json_valid(detail)),
  tapped_by TEXT NOT NULL,
  at TEXT NOT NULL,
  FOREIGN KEY (heat_id, lane) REFERENCES heat_lane (heat_id, lane)
) STRICT;
CREATE INDEX heat_event_by_heat ON heat_event (heat_id, seq);
CREATE INDEX heat_event_by_lane ON heat_event (heat_id, lane);
CREATE TRIGGER heat_event_never_updated BEFORE UPDATE ON heat_event
BEGIN SELECT RAISE (ABORT, 'taps are append-only: take one back with another'); END;
CREATE TRIGGER heat_event_never_deleted BEFORE DELETE ON heat_event
BEGIN SELECT RAISE (ABORT, 'taps are append-only: take one back with another'); END;
CREATE TRIGGER heat_lane_begun_update BEFORE UPDATE ON heat_lane
WHEN EXISTS (SELECT 1 FROM heat_event WHERE heat_id = OLD.heat_id AND lane = OLD.lane)
BEGIN SELECT RAISE (ABORT, 'a lane that has begun keeps its athlete'); END;
CREATE TRIGGER heat_lane_begun_delete BEFORE DELETE ON heat_lane
WHEN EXISTS (SELECT 1 FROM heat_event WHERE heat_id = OLD.heat_id AND lane = OLD.lane)
BEGIN SELECT RAISE (ABORT, 'a lane that has begun keeps its athlete'); END;

-- Called to a test and not there: goes to the end of the queue, and is counted.
CREATE TABLE absence (
  id TEXT PRIMARY KEY,
  day_id INTEGER NOT NULL,
  athlete_id INTEGER NOT NULL,
  test TEXT NOT NULL CHECK (test IN ('push-up', 'agility', 'vertical', 'core', 'endurance')),
  noted_by TEXT NOT NULL,
  at TEXT NOT NULL,
  FOREIGN KEY (day_id, athlete_id) REFERENCES entrant (day_id, athlete_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX absence_by_day ON absence (day_id, test, athlete_id);
`;
