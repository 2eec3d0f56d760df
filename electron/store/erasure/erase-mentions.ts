import { withoutName } from "../../domain/people/mentions.ts";
import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";

interface Text {
  readonly key: string | number;
  readonly text: string;
}

/** A place where people write freely; read without the athlete's own rows, which go anyway. */
interface FreeText {
  /** Rows as `key` and `text`, given `@athleteId`. */
  readonly read: string;
  /** Given a row's `@key` and its new `@text`. */
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
    read: "SELECT id AS key, reason AS text FROM heat WHERE reason <> ''",
    write: "UPDATE heat SET reason = @text WHERE id = @key",
  },
  {
    // The one tap with words: why a trial was lost.
    read: `SELECT seq AS key, json_extract(detail, '$.reason') AS text FROM heat_event
      WHERE json_extract(detail, '$.reason') IS NOT NULL AND (lane IS NULL OR (heat_id, lane) NOT IN
        (SELECT heat_id, lane FROM heat_lane WHERE athlete_id = @athleteId))`,
    write: "UPDATE heat_event SET detail = json_set(detail, '$.reason', @text) WHERE seq = @key",
  },
];

/** Texts of other rows (about others, or about heats) in which a name stands whole. */
function mentionsIn({ read }: FreeText, db: ReadableDb, athleteId: number, name: string): Text[] {
  return allRows<Text>(db, read, { athleteId })
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
    for (const mention of mentionsIn(place, db, athleteId, name)) execute(db, place.write, { ...mention });
  }
}
