/** The quarter inches nearest to some whole millimetres, in whole numbers. */
const quarters = (mm: string) => `((200 * ${mm} + 635) / 1270)`;
/** Whether a quarter inch was rounded to these millimetres: 6.35 mm each, a half up. */
const isInches = (mm: string) => `((${quarters(mm)} * 635 + 50) / 100 = ${mm})`;

/** A reach as it was read, as JSON; `other` is the other reach of the same attempt. */
const reading = (mm: string, other: string) => `json(CASE
  WHEN ${mm} % 5 = 0 AND NOT (${other} % 5 <> 0 AND ${isInches(mm)} AND ${isInches(other)})
    THEN json_object('unit', 'cm', 'halves', ${mm} / 5)
  WHEN ${isInches(mm)} THEN json_object('unit', 'in', 'quarters', ${quarters(mm)})
  ELSE json_object('unit', 'mm', 'whole', ${mm}) END)`;

/** The millimetres of a tap, and those of the other taps of its lane. */
const tapped = "heat_event.detail ->> '$.mm'";
const ofItsLane = `SELECT other.detail ->> '$.mm' AS mm FROM heat_event AS other WHERE other.heat_id = heat_event.heat_id
  AND other.lane = heat_event.lane AND json_type(other.detail, '$.mm') = 'integer'`;

/** A height that was read itself, in twentieths of a millimetre: 20 of them are a millimetre, 127 a quarter inch. */
const height = (mm: string) => `CASE
  WHEN ${mm} % 5 <> 0 AND ${isInches(mm)} THEN 127 * ${quarters(mm)} ELSE 20 * ${mm} END`;

/**
 * Keeps reaches as they were read, and heights in twentieths of a millimetre, in which half centimetres and quarter
 * inches are whole. Until now both were whole millimetres. Multiples of 5 mm are half centimetres; others are the quarter
 * inch that rounds to them; where both reaches of an attempt may be either, they stay centimetres. A height of which
 * nobody knows how it was read (of somebody deleted, or from another hall) stays as it is. Marks are made again when the
 * store is opened, since their rules are older.
 */
export const heightsAsRead = `
DROP TRIGGER attempt_never_updated;
UPDATE attempt SET seen = (
  SELECT json_set(attempt.seen, '$.standingReach', ${reading("reach", "touch")}, '$.touchReach', ${reading("touch", "reach")})
  FROM (SELECT attempt.seen ->> '$.standingReach' AS reach, attempt.seen ->> '$.touchReach' AS touch))
WHERE test = 'vertical' AND json_type(seen, '$.standingReach') = 'integer' AND json_type(seen, '$.touchReach') = 'integer';
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

DROP TRIGGER heat_event_never_updated;
CREATE TEMP TABLE lane_in_inches AS SELECT seq FROM heat_event
WHERE kind IN ('reach', 'touch') AND json_type(detail, '$.mm') = 'integer'
  AND EXISTS (SELECT 1 FROM (${ofItsLane}) WHERE mm % 5 <> 0)
  AND NOT EXISTS (SELECT 1 FROM (${ofItsLane}) WHERE NOT ${isInches("mm")});
UPDATE heat_event SET detail = (
  SELECT json_remove(json_set(heat_event.detail, '$.length', json(CASE
    WHEN heat_event.seq IN (SELECT seq FROM lane_in_inches) OR (mm % 5 <> 0 AND ${isInches("mm")})
      THEN json_object('unit', 'in', 'quarters', ${quarters("mm")})
    WHEN mm % 5 = 0 THEN json_object('unit', 'cm', 'halves', mm / 5)
    ELSE json_object('unit', 'mm', 'whole', mm) END)), '$.mm')
  FROM (SELECT ${tapped} AS mm))
WHERE kind IN ('reach', 'touch') AND json_type(detail, '$.mm') = 'integer';
DROP TABLE lane_in_inches;
CREATE TRIGGER heat_event_never_updated BEFORE UPDATE ON heat_event
WHEN NOT EXISTS (SELECT 1 FROM erasing) OR NEW.seq IS NOT OLD.seq OR NEW.id IS NOT OLD.id
  OR NEW.heat_id IS NOT OLD.heat_id OR NEW.lane IS NOT OLD.lane OR NEW.kind IS NOT OLD.kind
  OR NEW.at_ms IS NOT OLD.at_ms OR NEW.tapped_by IS NOT OLD.tapped_by OR NEW.at IS NOT OLD.at
  OR instr(NEW.detail, '[…]') = 0
BEGIN SELECT RAISE (ABORT, 'taps are append-only: take one back with another'); END;

DROP TRIGGER past_mark_never_updated;
UPDATE past_mark SET value = ${height("value")} WHERE test = 'vertical';
CREATE TRIGGER past_mark_never_updated BEFORE UPDATE OF fingerprint, date, test, variant, value ON past_mark
BEGIN SELECT RAISE (ABORT, 'earlier results are append-only: void it and enter a new one'); END;

DROP TRIGGER past_void_never_updated;
UPDATE past_void SET value = ${height("value")},
  instead = CASE WHEN instead IS NULL THEN NULL ELSE ${height("instead")} END WHERE test = 'vertical';
CREATE TRIGGER past_void_never_updated BEFORE UPDATE ON past_void
WHEN (NOT EXISTS (SELECT 1 FROM erasing) AND NOT EXISTS (SELECT 1 FROM stepping))
  OR NEW.id IS NOT OLD.id OR NEW.fingerprint IS NOT OLD.fingerprint
  OR NEW.date IS NOT OLD.date OR NEW.test IS NOT OLD.test OR NEW.variant IS NOT OLD.variant
  OR NEW.value IS NOT OLD.value OR NEW.instead IS NOT OLD.instead OR NEW.voided_by IS NOT OLD.voided_by
  OR NEW.at IS NOT OLD.at
  OR (NEW.athlete_id IS NOT OLD.athlete_id AND NOT EXISTS (SELECT 1 FROM stepping))
  OR (NEW.reason IS NOT OLD.reason AND (NOT EXISTS (SELECT 1 FROM erasing) OR instr(NEW.reason, '[…]') = 0))
BEGIN SELECT RAISE (ABORT, 'why an earlier result was removed stays on record'); END;

DROP TRIGGER nameless_mark_never_updated;
UPDATE nameless_mark SET value = 20 * value WHERE test = 'vertical';
CREATE TRIGGER nameless_mark_never_updated BEFORE UPDATE ON nameless_mark
BEGIN SELECT RAISE (ABORT, 'nameless marks are append-only'); END;

UPDATE reference_mark SET low = 20 * low, high = 20 * high WHERE test = 'vertical';

-- What a step would bring back. A mark that it brings back is made again from its attempts.
DROP TRIGGER step_row_never_updated;
UPDATE step_row SET before = json_set(before, '$.value', (SELECT ${height("mm")} FROM (SELECT before ->> '$.value' AS mm)))
WHERE place IN ('past_mark', 'past_void') AND before ->> '$.test' = 'vertical';
UPDATE step_row SET after = json_set(after, '$.value', (SELECT ${height("mm")} FROM (SELECT after ->> '$.value' AS mm)))
WHERE place IN ('past_mark', 'past_void') AND after ->> '$.test' = 'vertical';
UPDATE step_row SET before = json_set(before, '$.instead', (SELECT ${height("mm")} FROM (SELECT before ->> '$.instead' AS mm)))
WHERE place = 'past_void' AND before ->> '$.test' = 'vertical' AND before ->> '$.instead' IS NOT NULL;
UPDATE step_row SET after = json_set(after, '$.instead', (SELECT ${height("mm")} FROM (SELECT after ->> '$.instead' AS mm)))
WHERE place = 'past_void' AND after ->> '$.test' = 'vertical' AND after ->> '$.instead' IS NOT NULL;
CREATE TRIGGER step_row_never_updated BEFORE UPDATE ON step_row
BEGIN SELECT RAISE (ABORT, 'the history of who is who is append-only'); END;
`;
