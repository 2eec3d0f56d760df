import { withoutName } from "../../domain/people/mentions.ts";
import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";

interface Text {
  readonly key: string | number;
  readonly text: string;
}

/** A column of free text, read without the athlete's own rows, which are deleted anyway. */
interface FreeText {
  /** Query for rows as `key` and `text`, with the parameter `@athleteId`. */
  readonly read: string;
  /** Statement with a row's `@key` and its new `@text`. */
  readonly write: string;
}

const freeTexts: readonly FreeText[] = [
  {
    read: "SELECT seq AS key, note AS text FROM attempt WHERE note <> '' AND athlete_id <> @athleteId",
    write: "UPDATE attempt SET note = @text WHERE seq = @key",
  },
  {
    read: `SELECT attempt_id AS key, reason AS text FROM void
      WHERE attempt_id NOT IN (SELECT id FROM attempt WHERE athlete_id = @athleteId)`,
    write: "UPDATE void SET reason = @text WHERE attempt_id = @key",
  },
  {
    read: `SELECT day_id || ' ' || athlete_id || ' ' || test AS key, reason AS text FROM left_out
      WHERE reason <> '' AND athlete_id <> @athleteId`,
    write: "UPDATE left_out SET reason = @text WHERE day_id || ' ' || athlete_id || ' ' || test = @key",
  },
  {
    read: "SELECT id AS key, reason AS text FROM past_void WHERE reason <> '' AND athlete_id <> @athleteId",
    write: "UPDATE past_void SET reason = @text WHERE id = @key",
  },
  {
    read: "SELECT seq AS key, reason AS text FROM study_reading WHERE reason <> '' AND athlete_id <> @athleteId",
    write: "UPDATE study_reading SET reason = @text WHERE seq = @key",
  },
  {
    read: "SELECT id AS key, reason AS text FROM day_event WHERE reason <> ''",
    write: "UPDATE day_event SET reason = @text WHERE id = @key",
  },
  {
    read: "SELECT seq AS key, file AS text FROM step WHERE file <> ''",
    write: "UPDATE step SET file = @text WHERE seq = @key",
  },
  {
    read: "SELECT id AS key, reason AS text FROM heat WHERE reason <> ''",
    write: "UPDATE heat SET reason = @text WHERE id = @key",
  },
  {
    // The only tap with free text: the reason why a trial was lost.
    read: `SELECT seq AS key, json_extract(detail, '$.reason') AS text FROM heat_event
      WHERE json_extract(detail, '$.reason') IS NOT NULL AND (lane IS NULL OR (heat_id, lane) NOT IN
        (SELECT heat_id, lane FROM heat_lane WHERE athlete_id = @athleteId))`,
    write: "UPDATE heat_event SET detail = json_set(detail, '$.reason', @text) WHERE seq = @key",
  },
];

/** Returns the texts of other rows (about others, or about heats) that contain the whole name. */
function mentionsIn({ read }: FreeText, db: ReadableDb, athleteId: number, name: string): Text[] {
  return allRows<Text>(db, read, { athleteId })
    .map(({ key, text }) => ({ key, text, without: withoutName(text, name) }))
    .filter(({ text, without }) => text !== without)
    .map(({ key, without }) => ({ key, text: without }));
}

/** Counts the notes and reasons of others that contain an athlete's name. */
export function countMentions(db: ReadableDb, athleteId: number, name: string): number {
  return freeTexts.reduce((count, place) => count + mentionsIn(place, db, athleteId, name).length, 0);
}

/** Removes an athlete's name from the notes and reasons of others. Needs an erasure's permit. */
export function takeOutMentions(db: WritableDb, athleteId: number, name: string): void {
  for (const place of freeTexts) {
    for (const mention of mentionsIn(place, db, athleteId, name)) execute(db, place.write, { ...mention });
  }
}
