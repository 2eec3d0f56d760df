/** A table with data about athletes: the query for one athlete's rows, and the statement that deletes them. */
export interface HeldTable {
  readonly name: string;
  /** Selects every column by its name in the schema, with the parameter `@athleteId`. */
  readonly read: string;
  readonly remove: string;
}

/** The ids of an athlete (`@athleteId`) and of everybody whose record was made one with theirs. */
export const sameAthlete = `(WITH RECURSIVE own (id) AS (
    SELECT @athleteId
    UNION SELECT json_extract(row_key, '$.id') FROM own JOIN step_row ON step_row.athlete_id = own.id
      WHERE place = 'athlete')
  SELECT id FROM own)`;

/**
 * Every table that refers to an athlete, in the order in which their rows can be deleted: referring tables come first.
 * A test walks the schema, so that no new table or column is forgotten here. This one list decides both the data that
 * an athlete can ask to see and the data that erasure deletes.
 */
export const heldTables = [
  {
    name: "call",
    read: "SELECT day_id, athlete_id, test, at, device_id FROM call WHERE athlete_id = @athleteId",
    remove: "DELETE FROM call WHERE athlete_id = @athleteId",
  },
  {
    name: "absence",
    read: `SELECT id, day_id, athlete_id, test, noted_by, at FROM absence WHERE athlete_id = @athleteId ORDER BY at, id`,
    remove: "DELETE FROM absence WHERE athlete_id = @athleteId",
  },
  {
    name: "left_out",
    read: `SELECT day_id, athlete_id, test, kind, reason, decided_by, at FROM left_out WHERE athlete_id = @athleteId
      ORDER BY day_id, at, test`,
    remove: "DELETE FROM left_out WHERE athlete_id = @athleteId",
  },
  {
    name: "mark",
    read: `SELECT athlete_id, test, variant, day_id, fingerprint, state, value, detail, seq, rules, position,
        rest_minutes FROM mark
      WHERE athlete_id = @athleteId ORDER BY seq`,
    remove: "DELETE FROM mark WHERE athlete_id = @athleteId",
  },
  {
    name: "heat_event",
    read: `SELECT seq, id, heat_id, lane, kind, at_ms, detail, tapped_by, at FROM heat_event
      WHERE (heat_id, lane) IN (SELECT heat_id, lane FROM heat_lane WHERE athlete_id = @athleteId) ORDER BY seq`,
    remove: `DELETE FROM heat_event
      WHERE (heat_id, lane) IN (SELECT heat_id, lane FROM heat_lane WHERE athlete_id = @athleteId)`,
  },
  {
    name: "void",
    read: `SELECT attempt_id, reason, voided_by, at FROM void
      WHERE attempt_id IN (SELECT id FROM attempt WHERE athlete_id = @athleteId) ORDER BY at, attempt_id`,
    remove: "DELETE FROM void WHERE attempt_id IN (SELECT id FROM attempt WHERE athlete_id = @athleteId)",
  },
  {
    name: "attempt",
    read: `SELECT seq, id, day_id, athlete_id, test, variant, slot, seen, entered_by, note, source, at, replaces,
      heat_id, result, performed FROM attempt WHERE athlete_id = @athleteId ORDER BY seq`,
    remove: "DELETE FROM attempt WHERE athlete_id = @athleteId",
  },
  {
    name: "heat_lane",
    read: "SELECT heat_id, lane, day_id, athlete_id, variant FROM heat_lane WHERE athlete_id = @athleteId ORDER BY heat_id",
    remove: "DELETE FROM heat_lane WHERE athlete_id = @athleteId",
  },
  {
    name: "entrant",
    read: "SELECT day_id, athlete_id, state, bib, since FROM entrant WHERE athlete_id = @athleteId ORDER BY day_id",
    remove: "DELETE FROM entrant WHERE athlete_id = @athleteId",
  },
  {
    name: "past_void",
    read: `SELECT id, athlete_id, fingerprint, date, test, variant, value, instead, reason, voided_by, at FROM past_void
      WHERE athlete_id = @athleteId ORDER BY at, id`,
    remove: "DELETE FROM past_void WHERE athlete_id = @athleteId",
  },
  {
    name: "past_mark",
    read: `SELECT athlete_id, fingerprint, date, test, variant, value FROM past_mark WHERE athlete_id = @athleteId
      ORDER BY date, fingerprint`,
    remove: "DELETE FROM past_mark WHERE athlete_id = @athleteId",
  },
  {
    name: "study_reading",
    read: `SELECT seq, id, study_id, position, athlete_id, value, source, entered_by, reason, at FROM study_reading
      WHERE athlete_id = @athleteId ORDER BY seq`,
    remove: "DELETE FROM study_reading WHERE athlete_id = @athleteId",
  },
  {
    name: "athlete",
    read: `SELECT id, league_id, name, folded, number, birth_year, category, guardian_consent, board, share, asked
      FROM athlete WHERE id = @athleteId`,
    remove: "DELETE FROM athlete WHERE id = @athleteId",
  },
  {
    name: "step_row",
    read: `SELECT step_seq, position, place, athlete_id, row_key, before, after FROM step_row
      WHERE athlete_id IN ${sameAthlete} ORDER BY step_seq, position`,
    remove: `DELETE FROM step_row WHERE athlete_id IN ${sameAthlete}`,
  },
] as const satisfies readonly HeldTable[];

export type HeldTableName = (typeof heldTables)[number]["name"];
