import { withoutName } from "../domain/people/mentions.ts";
import { type ReadableDb, statement, type WritableDb } from "./database.ts";

interface Text {
  readonly key: string | number;
  readonly text: string;
}

/** A place where people write freely; read without the athlete's own rows, which go anyway. */
interface FreeText {
  /** Rows as `key` and `text`; the one parameter is the athlete's id. */
  readonly read: string;
  readonly write: string;
}

const freeTexts: readonly FreeText[] = [
  {
    read: "SELECT seq AS key, note AS text FROM attempt WHERE note <> '' AND athlete_id <> ?",
    write: "UPDATE attempt SET note = ? WHERE seq = ?",
  },
  {
    read: `SELECT attempt_id AS key, reason AS text FROM void
      WHERE attempt_id NOT IN (SELECT id FROM attempt WHERE athlete_id = ?)`,
    write: "UPDATE void SET reason = ? WHERE attempt_id = ?",
  },
  {
    read: `SELECT day_id || ' ' || athlete_id || ' ' || test AS key, reason AS text FROM left_out
      WHERE reason <> '' AND athlete_id <> ?`,
    write: "UPDATE left_out SET reason = ? WHERE day_id || ' ' || athlete_id || ' ' || test = ?",
  },
  {
    read: "SELECT id AS key, reason AS text FROM heat WHERE reason <> '' AND ? IS NOT NULL",
    write: "UPDATE heat SET reason = ? WHERE id = ?",
  },
  {
    // The one tap with words: why a trial was lost.
    read: `SELECT seq AS key, json_extract(detail, '$.reason') AS text FROM heat_event
      WHERE json_extract(detail, '$.reason') IS NOT NULL AND (lane IS NULL OR (heat_id, lane) NOT IN
        (SELECT heat_id, lane FROM heat_lane WHERE athlete_id = ?))`,
    write: "UPDATE heat_event SET detail = json_set(detail, '$.reason', ?) WHERE seq = ?",
  },
];

/** Texts of other rows (about others, or about heats) in which a name stands whole. */
function mentionsIn({ read }: FreeText, db: ReadableDb, athleteId: number, name: string): Text[] {
  return statement<[number], Text>(db, read)
    .all(athleteId)
    .map(({ key, text }) => ({ key, text, without: withoutName(text, name) }))
    .filter(({ text, without }) => text !== without)
    .map(({ key, without }) => ({ key, text: without }));
}

/** In how many notes and reasons of others an athlete's name stands. */
export function countMentions(db: ReadableDb, athleteId: number, name: string): number {
  return freeTexts.reduce((count, place) => count + mentionsIn(place, db, athleteId, name).length, 0);
}

/** Takes an athlete's name out of the notes and reasons of others. Needs the permit of an erasure. */
export function takeOutMentions(db: WritableDb, athleteId: number, name: string): void {
  for (const place of freeTexts) {
    const write = statement<[string, string | number]>(db, place.write);
    for (const { key, text } of mentionsIn(place, db, athleteId, name)) write.run(text, key);
  }
}
