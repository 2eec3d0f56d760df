import { randomUUID } from "node:crypto";
import { afterEach, expect, test } from "vitest";
import { joinedFacts } from "../../electron/domain/people/joined.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { eraseAthlete } from "../../electron/store/erasure/erase.ts";
import { heldRows } from "../../electron/store/erasure/held.ts";
import { joinRecords } from "../../electron/store/steps/join.ts";
import { stepById } from "../../electron/store/steps/steps.ts";
import { takeIdentityStep } from "../../electron/store/steps/take-step.ts";
import { undoStep, whyNotUndone } from "../../electron/store/steps/undo-step.ts";
import { type Athlete, addAthlete, athleteById, leagueNamed } from "../../electron/store/tables/athletes.ts";
import { addStudy, allStudies, dropStudy, seriesOf } from "../../electron/store/tables/studies.ts";
import { addReading, readingsOfBoth, standingReadings } from "../../electron/store/tables/study-readings.ts";
import { connectionOf } from "./connection.ts";

const at = "2026-11-14T09:00:00.000Z";
const opened: Store[] = [];
afterEach(() => {
  for (const store of opened.splice(0)) store.close();
});

const study = {
  id: randomUUID(),
  test: "core",
  variant: "",
  kind: "judges",
  dayId: null,
  aim: 20,
  by: "QA",
  at,
} as const;
const series = ["QA", "RS"].map((judge, index) => ({ position: index + 1, dayId: null, judge, date: null }));

/** A store with a study and two athletes, of whom the first has one reading by each judge. */
function filled() {
  const store = openStore({ file: ":memory:" });
  opened.push(store);
  const ids = store.write([], (db) => {
    const leagueId = leagueNamed(db, "Foundry Town");
    const blank = {
      leagueId,
      birthYear: null,
      category: null,
      guardianConsent: false,
      board: "bib",
    } as const;
    const more = { share: false, asked: false };
    const people = ["Ada Rill", "Bo Crank"].map((name) =>
      addAthlete(db, { ...blank, ...more, name, number: "" }),
    );
    addStudy(db, study, series);
    return people;
  });
  const [ada = 0, bo = 0] = ids;
  read(store, ada, 1, 90);
  read(store, ada, 2, 91);
  return { store, ada, bo };
}

function read(store: Store, athleteId: number, position: number, value: number | null, reason = ""): void {
  const reading = { studyId: study.id, position, athleteId, value, by: "QA", reason, at };
  store.write([], (db) => addReading(db, { ...reading, id: randomUUID(), source: "keyed" }));
}

function person(store: Store, id: number): Athlete {
  const athlete = athleteById(store.db, id);
  if (athlete === undefined) throw new Error("Nobody has this id.");
  return athlete;
}

test.each([
  "UPDATE study_reading SET value = 5",
  "UPDATE study_reading SET athlete_id = 2",
  "UPDATE study_reading SET reason = 'x'",
  "DELETE FROM study_reading",
  "REPLACE INTO study_reading SELECT seq, id, study_id, position, athlete_id, 5, source, entered_by, reason, at FROM study_reading",
])("a reading can't be changed: %s", (sql) => {
  const { store } = filled();
  const before = standingReadings(store.db, study.id);
  expect(() => connectionOf(store.db).exec(sql)).toThrow(/append-only|with a reason/);
  expect(standingReadings(store.db, study.id)).toEqual(before);
});

test("a study stays as it was planned, and goes only while it has no reading", () => {
  const { store } = filled();
  expect(() => connectionOf(store.db).exec("UPDATE study SET aim = 9")).toThrow(/stays as it was planned/);
  expect(() => connectionOf(store.db).exec("UPDATE study_series SET judge = 'X'")).toThrow(/stays as it was/);
  expect(() => store.write([], (db) => dropStudy(db, study.id))).toThrow(/FOREIGN KEY/);
  expect(allStudies(store.db)).toEqual([study]);
  expect(seriesOf(store.db, study.id)).toEqual(series);
});

test("a second reading needs a reason; one without a value cancels, and the next counts again", () => {
  const { store, ada } = filled();
  const values = () => standingReadings(store.db, study.id).map(({ position, value }) => [position, value]);
  expect(() => read(store, ada, 1, 92)).toThrow(/with a reason/);
  read(store, ada, 1, 92, "misread");
  expect(values()).toEqual([
    [1, 92],
    [2, 91],
  ]);
  expect(() => read(store, ada, 1, null)).toThrow(/with a reason/);
  read(store, ada, 1, null, "another's");
  expect(values()).toEqual([[2, 91]]);
  read(store, ada, 1, 93);
  expect(values()).toEqual([
    [1, 93],
    [2, 91],
  ]);
});

test("whoever is erased takes their readings along, and their name out of others' reasons", () => {
  const { store, ada, bo } = filled();
  read(store, bo, 1, 80);
  read(store, bo, 1, 81, "mixed up with Ada Rill");
  expect(heldRows(store.db, ada).study_reading).toHaveLength(2);
  store.write([], (db) => eraseAthlete(db, person(store, ada), { id: "e-1", at, by: "QA" }, []));
  expect(heldRows(store.db, ada).study_reading).toEqual([]);
  expect(heldRows(store.db, bo).study_reading.map(({ reason }) => reason)).toEqual(["", "mixed up with […]"]);
});

test("two records made one have all readings, and each its own again when that is undone", () => {
  const { store, ada, bo } = filled();
  expect(readingsOfBoth(store.db, bo, ada)).toEqual([]);
  const pair = { kept: person(store, bo), gone: person(store, ada) };
  const step = { id: "s-1", kind: "joined", at, by: "QA", file: "", counts: {} } as const;
  store.write([], (db) => {
    const after = { ...pair.kept, ...joinedFacts(pair.kept, pair.gone) };
    takeIdentityStep(db, step, [bo, ada], () => joinRecords(db, pair, after), bo);
  });
  expect(standingReadings(store.db, study.id).map(({ athleteId }) => athleteId)).toEqual([bo, bo]);
  const kept = stepById(store.db, "s-1");
  if (kept === undefined) throw new Error("The step is not there.");
  expect(whyNotUndone(store.db, kept)).toBeNull();
  store.write([], (db) => undoStep(db, kept, { by: "QA", at, reason: "Undone" }));
  expect(standingReadings(store.db, study.id).map(({ athleteId }) => athleteId)).toEqual([ada, ada]);
});

test("two who have a reading each in one series are told apart", () => {
  const { store, ada, bo } = filled();
  read(store, bo, 2, 70);
  expect(readingsOfBoth(store.db, bo, ada)).toEqual([{ test: "core" }]);
});
