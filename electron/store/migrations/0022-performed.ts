/**
 * Adds when an attempt was done, apart from when it was entered: paper is entered later. Of what a station or a heat
 * entered both are one; of what a sheet brought nobody knows when it was done.
 */
export const performed = `
ALTER TABLE attempt ADD COLUMN performed TEXT;
DROP TRIGGER attempt_never_updated;
UPDATE attempt SET performed = at WHERE source <> 'sheet';
CREATE TRIGGER attempt_never_updated BEFORE UPDATE ON attempt
WHEN (NOT EXISTS (SELECT 1 FROM erasing) AND NOT EXISTS (SELECT 1 FROM stepping))
  OR NEW.seq IS NOT OLD.seq OR NEW.id IS NOT OLD.id OR NEW.day_id IS NOT OLD.day_id
  OR NEW.test IS NOT OLD.test OR NEW.variant IS NOT OLD.variant
  OR NEW.slot IS NOT OLD.slot OR NEW.seen IS NOT OLD.seen OR NEW.entered_by IS NOT OLD.entered_by
  OR NEW.source IS NOT OLD.source OR NEW.at IS NOT OLD.at OR NEW.performed IS NOT OLD.performed
  OR NEW.heat_id IS NOT OLD.heat_id OR NEW.result IS NOT OLD.result
  OR (NEW.athlete_id IS NOT OLD.athlete_id AND NOT EXISTS (SELECT 1 FROM stepping))
  OR (NEW.note IS NOT OLD.note AND (NOT EXISTS (SELECT 1 FROM erasing) OR instr(NEW.note, '[…]') = 0))
  OR (NEW.replaces IS NOT OLD.replaces AND (NEW.replaces IS NOT NULL OR OLD.replaces NOT IN
    (SELECT id FROM attempt WHERE athlete_id IN (SELECT athlete_id FROM erasing))))
BEGIN SELECT RAISE (ABORT, 'attempts are append-only: void it and enter a new one'); END;
`;
