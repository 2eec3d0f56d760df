import { statSync } from "node:fs";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";
import { timed } from "./entry.ts";

/** Everybody of a day does all five tests: 1,000 marks and some half a megabyte. */
const athletes = 200;
/** Days of one transaction. */
const atOnce = 4;

/**
 * Makes a store of at least so many megabytes, as years of testing days leave it: one day that is open, with its five tests
 * entered at the door, and closed days with the same attempts and marks. Closed, and so under a whole seal.
 * @returns the ids of the athletes who are here on the open day
 */
export async function makeHeldStore(file: string, megabytes: number): Promise<readonly number[]> {
  const day = await boardDay(crowd(athletes), file);
  const { store } = day.desk;
  for (let index = 0; index < athletes * testCodes.length; index += 1) await timed(day, index);
  for (let from = 1; statSync(file).size < megabytes * 1e6; from += atOnce) {
    for (let at = from; at < from + atOnce; at += 1) addEarlierDay(store, day.dayId, at);
  }
  day.desk.close();
  return day.ids;
}

/** Copies the open day's attempts and marks to a day so many days before it. */
function addEarlierDay(store: Store, dayId: number, back: number): void {
  const date = new Date(Date.parse("2026-11-14") - back * 86_400_000).toISOString().slice(0, 10);
  const [id, shift] = [100_000 - back, back * 100_000];
  store.write([], (db) =>
    db.exec(`
      INSERT INTO day (id, date, title, state, rest_minutes, identity)
        SELECT ${id}, '${date}', title, 'closed', rest_minutes, identity || '-${back}' FROM day WHERE id = ${dayId};
      INSERT INTO day_protocol SELECT ${id}, test, parameters FROM day_protocol WHERE day_id = ${dayId};
      INSERT INTO entrant (day_id, athlete_id, state, bib, since)
        SELECT ${id}, athlete_id, state, bib, since FROM entrant WHERE day_id = ${dayId};
      INSERT INTO attempt (seq, id, day_id, athlete_id, test, variant, slot, seen, entered_by, note, source, at, performed)
        SELECT seq + ${shift}, id || '-${back}', ${id}, athlete_id, test, variant, slot, seen, entered_by, note, source,
          at, performed FROM attempt WHERE day_id = ${dayId} AND replaces IS NULL;
      INSERT INTO mark (athlete_id, test, variant, day_id, fingerprint, state, value, detail, seq, rules, position, rest_minutes)
        SELECT athlete_id, test, variant, ${id}, fingerprint, state, value, detail, seq + ${shift}, rules, position,
          rest_minutes FROM mark WHERE day_id = ${dayId};`),
  );
}
