/**
 * Adds the device that holds a heat, and the one that called an athlete; null: the table, as all of before. Each of them
 * gathers or runs one heat of a test at a time. No key to `device`: a device leaves with its day, or is sent away, and
 * its heats and calls stay.
 */
export const heatHolder = `
ALTER TABLE heat ADD COLUMN device_id TEXT CHECK (length(device_id) = 36);
DROP INDEX heat_live;
CREATE UNIQUE INDEX heat_live ON heat (day_id, test, coalesce(device_id, '')) WHERE state <> 'ended';
CREATE TRIGGER heat_holder_stays BEFORE UPDATE OF device_id ON heat
WHEN OLD.state = 'ended' AND NEW.device_id IS NOT OLD.device_id
BEGIN SELECT RAISE (ABORT, 'a heat that has ended stays as it is'); END;
ALTER TABLE call ADD COLUMN device_id TEXT CHECK (length(device_id) = 36);
`;
