import { randomUUID } from "node:crypto";
import { afterEach, expect, test } from "vitest";
import { openStore } from "../../electron/store/connection/open.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { addAthlete, leagueNamed } from "../../electron/store/tables/athletes.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { addDay, setDayState } from "../../electron/store/tables/days.ts";
import { setEntrant } from "../../electron/store/tables/entrants.ts";
import { marksOfDay, rebuildMarks } from "../../electron/store/tables/marks.ts";
import { recordAttempt, voidAttempt } from "../../electron/store/tables/record.ts";
import { connectionOf } from "./connection.ts";

const at = "2026-11-14T09:00:00.000Z";
const opened: Store[] = [];
afterEach(() => {
  for (const store of opened.splice(0)) store.close();
});

/** A store in memory with one athlete, one attempt that stands and one that is void. */
function filled() {
  const store = openStore({ file: ":memory:" });
  opened.push(store);
  const [standing, ended] = [randomUUID(), randomUUID()];
  const dayId = store.write(["attempts"], (db) => {
    const protocols = [
      { test: "push-up" as const, parameters: { bpm: 40, beatsPerRep: 2, missesToStop: 3 } },
      { test: "core" as const, parameters: { cycle: 240 } },
    ];
    const day = addDay(db, { date: "2026-11-14", title: "A day", restMinutes: 5 }, protocols);
    setDayState(db, day, "open");
    const athleteId = addAthlete(db, {
      leagueId: leagueNamed(db, "Foundry Town"),
      ...{ name: "Ada Rill", number: "07", birthYear: null, category: null, guardianConsent: false },
      ...{ board: "bib", share: false, asked: false },
    });
    setEntrant(db, day, { athleteId, state: "testing", bib: 1, since: at });
    const common = { athleteId, enteredBy: "QA", note: "", source: "station", at, replaces: null } as const;
    const pushUp = { how: "tally", reps: 20, offAtEnd: 0 };
    recordAttempt(db, day, { ...common, id: standing, test: "push-up", variant: "full", seen: pushUp });
    recordAttempt(db, day, { ...common, id: ended, test: "core", variant: "", seen: { held: 90_000 } });
    voidAttempt(db, ended, { reason: "Wrong person", by: "QA", at });
    return day;
  });
  return { store, dayId, standing, ended };
}

const changes = [
  "UPDATE attempt SET seen = '{}'",
  "UPDATE attempt SET performed = NULL",
  "UPDATE attempt SET id = 'other' WHERE seq = 1",
  "UPDATE OR REPLACE attempt SET seq = 2 WHERE seq = 1",
  "DELETE FROM attempt",
  "DELETE FROM attempt WHERE seq = 1",
  `INSERT OR REPLACE INTO attempt SELECT seq, id, day_id, athlete_id, test, variant, slot, '{}', entered_by, note,
    source, at, replaces, heat_id, result, performed FROM attempt WHERE seq = 1`,
  `REPLACE INTO attempt SELECT seq + 100, id, day_id, athlete_id, test, variant, slot, '{}', entered_by, note, source,
    at, replaces, heat_id, result, performed FROM attempt WHERE seq = 1`,
  `INSERT INTO attempt SELECT seq, id, day_id, athlete_id, test, variant, slot, '{}', entered_by, note, source, at,
    replaces, heat_id, result, performed FROM attempt WHERE seq = 1 ON CONFLICT DO UPDATE SET seen = excluded.seen`,
  "UPDATE void SET reason = 'nothing'",
  "DELETE FROM void",
  "INSERT OR REPLACE INTO void SELECT attempt_id, 'nothing', voided_by, at FROM void",
  "REPLACE INTO void SELECT attempt_id, 'nothing', voided_by, at FROM void",
];

test.each(changes)("what was seen can't be changed: %s", (sql) => {
  const { store, dayId } = filled();
  const before = attemptsOfDay(store.db, dayId);
  expect(before).toHaveLength(2);
  expect(() => connectionOf(store.db).exec(sql)).toThrow(/append-only/);
  expect(attemptsOfDay(store.db, dayId)).toEqual(before);
});

test("an attempt can't refer to nobody, and a void to no attempt", () => {
  const { store } = filled();
  const stray = `INSERT INTO attempt (id, day_id, athlete_id, test, variant, slot, seen, entered_by, note, source, at)
    VALUES ('stray', 1, 999, 'core', '', '', '{}', 'QA', '', 'station', '${at}')`;
  expect(() => connectionOf(store.db).exec(stray)).toThrow(/FOREIGN KEY/);
  const nothing = `INSERT INTO void VALUES ('nothing', 'Slip', 'QA', '${at}')`;
  expect(() => connectionOf(store.db).exec(nothing)).toThrow(/FOREIGN KEY/);
});

test("the parameters of an open day are frozen", () => {
  const { store } = filled();
  expect(() => connectionOf(store.db).exec("UPDATE day_protocol SET parameters = '{}'")).toThrow(/frozen/);
  expect(() => connectionOf(store.db).exec("DELETE FROM day_protocol")).toThrow(/frozen/);
  const replace = "INSERT OR REPLACE INTO day_protocol SELECT day_id, test, '{}' FROM day_protocol";
  expect(() => connectionOf(store.db).exec(replace)).toThrow(/frozen/);
});

test("marks are no truth: thrown away or damaged, one call makes them again", () => {
  const { store, dayId } = filled();
  const before = marksOfDay(store.db, dayId);
  expect(before).toMatchObject([{ test: "push-up", mark: { state: "complete", value: 20 } }]);
  connectionOf(store.db).exec(
    'UPDATE mark SET value = 99, detail = \'{"state":"complete","value":99}\', seq = 7',
  );
  store.write([], rebuildMarks);
  expect(marksOfDay(store.db, dayId)).toEqual(before);
  connectionOf(store.db).exec("DELETE FROM mark");
  store.write([], rebuildMarks);
  expect(marksOfDay(store.db, dayId)).toEqual(before);
});

test("a transaction that fails leaves nothing and announces nothing", () => {
  const { store, dayId, standing } = filled();
  const seq = store.seq();
  const fail = () =>
    store.write(["attempts"], (db) => {
      voidAttempt(db, standing, { reason: "Slip", by: "QA", at });
      throw new Error("the disk is full");
    });
  expect(fail).toThrow("the disk is full");
  expect(store.seq()).toBe(seq);
  expect(marksOfDay(store.db, dayId)).toHaveLength(1);
  expect(attemptsOfDay(store.db, dayId).filter((attempt) => attempt.void === null)).toHaveLength(1);
});
