import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { joinedFacts } from "../../electron/domain/people/joined.ts";
import type { ReadableDb } from "../../electron/store/connection/database.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { eraseAthlete } from "../../electron/store/erasure/erase.ts";
import { joinRecords } from "../../electron/store/steps/join.ts";
import { rowsOfStep, stepById } from "../../electron/store/steps/steps.ts";
import { takeIdentityStep } from "../../electron/store/steps/take-step.ts";
import { undoStep, whyNotUndone } from "../../electron/store/steps/undo-step.ts";
import {
  addAthlete,
  allAthletes,
  athleteById,
  leagueNamed,
  updateAthlete,
} from "../../electron/store/tables/athletes.ts";
import { addDay, setDayState } from "../../electron/store/tables/days.ts";
import { leaveOut, setEntrant } from "../../electron/store/tables/entrants.ts";
import { noteExport } from "../../electron/store/tables/exports.ts";
import { addEvent } from "../../electron/store/tables/heat-events.ts";
import { takeLane } from "../../electron/store/tables/heat-lanes.ts";
import { addHeat, endHeat, startHeat } from "../../electron/store/tables/heats.ts";
import { marksOfDay, rebuildMarks } from "../../electron/store/tables/marks.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { cm } from "../lengths.ts";
import { connectionOf } from "./connection.ts";
import { dump } from "./hall.ts";

const at = "2026-11-14T09:00:00.000Z";
const undoing = { by: "QA", at, reason: "Undone" };
const tests = ["push-up", "core", "vertical"] as const;

/** What one of two records of a person has: on up to two days, tests done, an earlier result, a lane of a heat. */
const recordOf = fc.record({
  number: fc.constantFrom("", "7", "12"),
  birthYear: fc.constantFrom(null, 1990, 2012),
  board: fc.constantFrom("name", "bib", "hidden"),
  share: fc.boolean(),
  asked: fc.boolean(),
  guardianConsent: fc.boolean(),
  days: fc.subarray([0, 1]),
  tests: fc.subarray([...tests]),
  readiness: fc.boolean(),
  lane: fc.boolean(),
  past: fc.boolean(),
});
type Record = typeof recordOf extends fc.Arbitrary<infer Each> ? Each : never;

const seenOf = {
  "push-up": { how: "tally", reps: 20, offAtEnd: 0 },
  core: { held: 61_000 },
  vertical: { standingReach: cm(200), touchReach: cm(240) },
};

/** A store with two records, Bo, and two days; the tests of the two never fall on one day and test. */
function hall(records: readonly [Record, Record]): { store: Store; ids: [number, number]; days: number[] } {
  const store = openStore({ file: ":memory:" });
  return store.write([], (db) => {
    const days = [0, 1].map((index) => {
      const protocols = tests.map((each) => ({ test: each, parameters: {} }));
      const day = { date: `2026-1${index}-14`, title: "A day", restMinutes: 5 };
      const id = addDay(
        db,
        day,
        protocols.map((each) => ({ ...each, parameters: parametersOf(each.test) })),
      );
      setDayState(db, id, "open");
      if (index === 0) setDayState(db, id, "closed");
      return id;
    });
    const ids = records.map((record, index) => {
      const { days: _, tests: __, readiness: ___, lane: ____, past: _____, ...facts } = record;
      const league = leagueNamed(db, index === 0 ? "Lantern Bay" : "Mill City");
      const name = index === 0 ? "Ada Rill" : "Ada R.";
      return addAthlete(db, { ...facts, leagueId: league, name, category: null });
    }) as [number, number];
    const bo = addAthlete(db, {
      ...{ leagueId: leagueNamed(db, "Lantern Bay"), name: "Bo Crank", number: "99", birthYear: null },
      ...{ category: null, guardianConsent: false, board: "name", share: true, asked: true },
    });
    for (const dayId of days) setEntrant(db, dayId, { athleteId: bo, state: "testing", bib: 90, since: at });
    for (const [index, record] of records.entries()) fill(db, ids[index] ?? 0, index, record, days);
    return { store, ids, days };
  });
}

function parametersOf(test: (typeof tests)[number]): unknown {
  return {
    "push-up": { bpm: 40, beatsPerRep: 2, missesToStop: 3 },
    core: { cycle: 240 },
    vertical: { trials: 3 },
  }[test];
}

function fill(
  db: Parameters<Parameters<Store["write"]>[1]>[0],
  athleteId: number,
  index: number,
  record: Record,
  days: readonly number[],
): void {
  for (const which of record.days) {
    const dayId = days[which] ?? 0;
    const takes = record.tests.filter((each) => (tests.indexOf(each) + which) % 2 === index);
    const isIn = takes.length > 0 || (record.lane && which === 1);
    setEntrant(db, dayId, {
      ...{ athleteId, state: isIn ? "testing" : "expected", bib: isIn ? 10 + index : null, since: at },
    });
    if (record.readiness) {
      leaveOut(db, dayId, {
        athleteId,
        test: "endurance",
        kind: "readiness",
        reason: "",
        decidedBy: "QA",
        at,
      });
    }
    for (const each of takes) {
      const variant = each === "push-up" ? "full" : "";
      const common = { enteredBy: "QA", note: "", source: "station", replaces: null, at } as const;
      recordAttempt(db, dayId, {
        ...common,
        id: randomUUID(),
        athleteId,
        test: each,
        variant,
        seen: seenOf[each],
      });
    }
    if (record.lane && which === 1) ranAlone(db, dayId, athleteId);
  }
  if (record.past) {
    const mark = { fingerprint: "core cycle=240", date: "2025-10-01", test: "core" as const, variant: "" };
    addPastMark(db, { ...mark, athleteId, value: 90 });
  }
}

function ranAlone(db: Parameters<typeof addHeat>[0], dayId: number, athleteId: number): void {
  const id = randomUUID();
  addHeat(db, { id, dayId, test: "core", holder: null, lanes: 1, gatheredAt: at, gatheredBy: "QA" });
  takeLane(db, { id, dayId }, { lane: 1, athleteId, variant: "" });
  startHeat(db, id, { ms: 5, boot: "b", wall: at });
  addEvent(db, id, { id: randomUUID(), lane: 1, kind: "stop", atMs: 60_000, detail: {}, by: "QA", at });
  endHeat(db, id, { ending: "done", reason: "", by: "QA", at });
}

function requirePair(db: ReadableDb, [one, other]: readonly [number, number]) {
  const kept = athleteById(db, one);
  const gone = athleteById(db, other);
  if (kept === undefined || gone === undefined) throw new Error("Two records are needed.");
  return { kept, gone };
}

const stepId = randomUUID();
function joined({ store, ids }: ReturnType<typeof hall>): void {
  store.write([], (db) => {
    const pair = requirePair(db, ids);
    const step = { id: stepId, kind: "joined", at, by: "QA", file: "", counts: {} } as const;
    const after = joinedFacts(pair.kept, pair.gone);
    takeIdentityStep(db, step, ids, () => joinRecords(db, pair, after), ids[0]);
  });
}
function step(store: Store) {
  const found = stepById(store.db, stepId);
  if (found === undefined) throw new Error("There is no step.");
  return found;
}

/** All rows but those of the history itself, and the counters that only go up. */
function facts(store: Store) {
  const all = [...dump(store.db)];
  expect(all.length).toBeGreaterThan(20);
  return new Map(all.filter(([table]) => !/^(?:step|step_row|athlete_highest|sqlite_)/.test(table)));
}

test("property: two records made one and taken apart again are as before, to the last row", () => {
  fc.assert(
    fc.property(recordOf, recordOf, (one, other) => {
      const before = hall([one, other]);
      const { store, ids } = before;
      const rows = facts(store);
      joined(before);
      expect(athleteById(store.db, ids[1])).toBeUndefined();
      expect(whyNotUndone(store.db, step(store))).toBeNull();
      store.write([], (db) => undoStep(db, step(store), undoing));
      expect(facts(store)).toEqual(rows);
      // Nothing that names anybody is held about a step that was undone.
      expect(rowsOfStep(store.db, step(store).seq).filter(({ place }) => place !== "attempt")).toEqual([]);
      store.close();
    }),
    { numRuns: 150 },
  );
});

test("property: one record has the attempts of both, unchanged, and the marks that they come to", () => {
  fc.assert(
    fc.property(recordOf, recordOf, (one, other) => {
      const before = hall([one, other]);
      const { store, ids, days } = before;
      const db = connectionOf(store.db);
      const seen = "SELECT seq, id, day_id, test, variant, seen, note, at FROM attempt ORDER BY seq";
      const attempts = db.prepare(seen).all();
      const count = () => days.map((day) => marksOfDay(store.db, day).length);
      const marks = count();
      joined(before);
      expect(db.prepare(seen).all()).toEqual(attempts);
      expect(count()).toEqual(marks);
      const told = days.map((day) => marksOfDay(store.db, day));
      store.write([], (write) => rebuildMarks(write));
      expect(days.map((day) => marksOfDay(store.db, day))).toEqual(told);
      expect(db.prepare("PRAGMA foreign_key_check").all()).toEqual([]);
      const kept = allAthletes(store.db).find(({ id }) => id === ids[0]);
      // Of each consent the stricter stands; one that was asked stands alone beside one that never was.
      const says = one.asked === other.asked ? [one, other] : [one, other].filter(({ asked }) => asked);
      expect(kept?.share).toBe(says.every(({ share }) => share));
      expect(kept?.guardianConsent).toBe(says.every(({ guardianConsent }) => guardianConsent));
      expect([one.board, other.board].includes("hidden")).toBe(kept?.board === "hidden");
      store.close();
    }),
    { numRuns: 100 },
  );
});

test("property: who is erased after two records became one leaves no byte of either name", () => {
  fc.assert(
    fc.property(recordOf, recordOf, (one, other) => {
      const before = hall([one, other]);
      const { store, ids } = before;
      joined(before);
      store.write([], (db) => {
        const { kept } = { kept: athleteById(db, ids[0]) };
        if (kept === undefined) throw new Error("Nobody is there.");
        eraseAthlete(db, kept, { id: randomUUID(), at, by: "QA" }, []);
      });
      expect(JSON.stringify([...dump(store.db)])).not.toMatch(/Ada R/i);
      expect(whyNotUndone(store.db, step(store))?.key).toBe("steps.erased");
      store.close();
    }),
    { numRuns: 60 },
  );
});

const plain: Record = {
  ...{ number: "7", birthYear: 1990, board: "name", share: true, asked: true, guardianConsent: false },
  ...{ days: [1], tests: ["push-up", "core"], readiness: false, lane: false, past: false },
};

test.each([
  ["a later result", "steps.tested", later],
  ["a change of the person", "steps.personChanged", changed],
  ["a later place on a list", "steps.checkedIn", listed],
  ["a file of anonymous data", "steps.shared", shared],
  ["an imported result", "steps.pastChanged", imported],
] as const)("%s keeps two records one, and is told", (_what, key, depend) => {
  const before = hall([plain, { ...plain, number: "" }]);
  joined(before);
  depend(before);
  expect(whyNotUndone(before.store.db, step(before.store))?.key).toBe(key);
  expect(() => before.store.write([], (db) => undoStep(db, step(before.store), undoing))).toThrow();
});

type Hall = ReturnType<typeof hall>;
function later({ store, ids, days }: Hall): void {
  const common = { enteredBy: "QA", note: "", source: "station", replaces: null, at } as const;
  const seen = {
    id: randomUUID(),
    athleteId: ids[0],
    test: "vertical",
    variant: "",
    seen: seenOf.vertical,
  } as const;
  store.write([], (db) => recordAttempt(db, days[1] ?? 0, { ...common, ...seen }));
}
function changed({ store, ids }: Hall): void {
  store.write([], (db) => {
    const { kept } = { kept: athleteById(db, ids[0]) };
    if (kept !== undefined) updateAthlete(db, ids[0], { ...kept, board: "hidden" });
  });
}
function listed({ store, ids, days }: Hall): void {
  const entrant = { athleteId: ids[0], state: "withdrawn", bib: 10, since: at } as const;
  store.write([], (db) => setEntrant(db, days[1] ?? 0, entrant));
}
function shared({ store, days }: Hall): void {
  store.write([], (db) => noteExport(db, { dayId: days[1] ?? 0, at, k: 5, sha256: "abc" }));
}
function imported({ store, ids }: Hall): void {
  const mark = { fingerprint: "x", date: "2025-01-01", test: "core", variant: "", value: 5 } as const;
  store.write([], (db) => addPastMark(db, { ...mark, athleteId: ids[0] }));
}

test("without a step's permit no row changes hands, and with it nothing else of a row", () => {
  const { store, ids } = hall([plain, { ...plain, lane: true }]);
  const db = connectionOf(store.db);
  expect(() => db.exec(`UPDATE attempt SET athlete_id = ${ids[0]}`)).toThrow(/append-only/);
  expect(() => db.exec(`UPDATE heat_lane SET athlete_id = ${ids[0]}`)).toThrow(/keeps its athlete/);
  db.exec("BEGIN; PRAGMA defer_foreign_keys = ON; INSERT INTO stepping (step_id) VALUES ('x')");
  expect(() => db.exec("UPDATE attempt SET note = 'more'")).toThrow(/append-only/);
  expect(() => db.exec("UPDATE heat_lane SET variant = 'knee'")).toThrow(/keeps its athlete/);
  expect(() => db.exec("DELETE FROM stepping")).toThrow(/history/);
  expect(() => db.exec("COMMIT")).toThrow(/FOREIGN KEY/);
  db.exec("ROLLBACK");
});
