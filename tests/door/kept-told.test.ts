import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { toldOnBoard } from "../../electron/api/board/view.ts";
import { cardsOf } from "../../electron/api/cards/shape.ts";
import { tellMarks } from "../../electron/api/marks/marks.ts";
import { viewNoise } from "../../electron/api/noise/view.ts";
import { marksHere } from "../../electron/api/place/marks-here.ts";
import type { MarksInOrder } from "../../electron/domain/statistics/marks-in-order.ts";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import { defaultParameters, protocolOf, testCodes } from "../../electron/domain/tests/registry.ts";
import { connectBytes, type InMemory } from "../../electron/store/connection/connect.ts";
import type { ReadableDb } from "../../electron/store/connection/database.ts";
import { createStore } from "../../electron/store/connection/store.ts";
import { allAthletes, athleteById } from "../../electron/store/tables/athletes.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { allDays, dayById } from "../../electron/store/tables/days.ts";
import { addPastVoid, pastMarksOf, removePastMark } from "../../electron/store/tables/past-marks.ts";
import { recordAttempt, voidAttempt } from "../../electron/store/tables/record.ts";
import { fillEarlier } from "../bench/earlier-days.ts";
import { connectionOf } from "../store/connection.ts";
import { type BoardDay, boardDay } from "./board-day.ts";
import { crowd } from "./crowd.ts";
import { addPeople } from "./people-of-a-day.ts";
import { take as takeSheet } from "./sheets.ts";
import { entry, hold, jump, pastOf, reps, setState } from "./station-day.ts";

/** What is kept of news, boards and cards is what a store that keeps nothing tells, whatever was done before. */

const who = { bib: fc.integer({ min: 1, max: 5 }), n: fc.nat(40) };
const kinds = [
  ...["plank", "plank", "circuit", "stop", "leap", "correct", "void", "past", "unpast", "moved"],
  ...[
    "then",
    "then",
    "thenVoid",
    "rolledBack",
    "joined",
    "erased",
    "sheet",
    "undone",
    "hidden",
    "left",
    "closed",
  ],
] as const;
const step = fc.record({ kind: fc.constantFrom(...kinds), ...who });
type Step = typeof step extends fc.Arbitrary<infer One> ? One : never;

const why = { reason: "Misread", by: "QA" };

/** A day, and somebody else of whom earlier results are known: one of the five under another spelling, as it turns out. */
interface Hall {
  readonly day: BoardDay;
  readonly guest: number;
}

async function hall(): Promise<Hall> {
  const day = await boardDay(
    crowd(5).map((each, index) => ({
      ...each,
      category: "women",
      share: true,
      birthYear: 1990 + 8 * (index % 2),
    })),
  );
  fillEarlier(day, { name: "monthly", days: 2, apart: 28 });
  const [guest = 0] = addPeople(day, [{ league: "Foundry Town", name: "Ashe Velvet" }], null);
  for (const [at, value] of [70, 74, 69].entries())
    pastOf(day, guest, "core", value * 1000, `2026-02-1${at}`);
  return { day, guest };
}

async function take({ day, guest }: Hall, { kind, bib, n }: Step): Promise<unknown> {
  const { desk, dayId, ids } = day;
  const athleteId = ids[bib - 1] ?? 0;
  const at = desk.now().toISOString();
  const organiser = day.as("organiser");
  const enter = (code: "core" | "endurance" | "vertical", seen: unknown, more = {}) =>
    organiser.station.enter(entry(athleteId, code, seen, { sure: true, ...more }));
  const standing = (id: number) => attemptsOfDay(desk.store.db, id).filter((each) => each.void === null);
  const earlier = allDays(desk.store.db).filter(({ id }) => id !== dayId)[n % 2]?.id ?? 0;
  const thenAgain = {
    test: "push-up" as const,
    variant: "full",
    enteredBy: "QA",
    note: "",
    at,
    replaces: null,
  };
  const recordThen = () =>
    desk.store.write([], (db) => {
      const [first] = standing(earlier).filter(
        (each) => each.athleteId === athleteId && each.test === "push-up",
      );
      if (first !== undefined) voidAttempt(db, first.id, { ...why, at });
      const attempt = {
        ...thenAgain,
        id: randomUUID(),
        athleteId,
        seen: reps(10 + n),
        source: "station" as const,
      };
      recordAttempt(db, earlier, attempt);
      if (kind === "rolledBack") {
        tellAll(db, dayId);
        throw new Error("power cut");
      }
    });
  switch (kind) {
    case "plank":
      return enter("core", hold(60 + n));
    case "circuit":
      return enter("endurance", { finished: true, time: 360_000 + 1000 * n });
    case "stop":
      return enter("endurance", { finished: false, roundsDone: n % 3, repsDone: 4 });
    case "leap":
      return enter("vertical", jump(2100, 2450 + 2 * n));
    case "correct": {
      const attempt = standing(dayId).find((each) => each.test === "core");
      return enter("core", hold(50 + n), { replaces: { attemptId: attempt?.id ?? "", reason: "Misread" } });
    }
    case "void":
      return organiser.station.void({ attemptId: standing(dayId)[n % 3]?.id ?? "", ...why });
    case "past":
      return day.past(bib, "core", 1000 * (60 + n), n % 2 === 0 ? "2025-03-01" : `2025-04-${10 + (n % 9)}`);
    case "unpast":
      return desk.store.write([], (db) => {
        const [mark] = [...pastMarksOf(db, athleteId), ...pastMarksOf(db, guest)];
        if (mark === undefined) throw new Error("none");
        addPastVoid(db, { ...mark, id: randomUUID(), instead: null, reason: "Twice", by: "QA", at });
        removePastMark(db, mark);
      });
    case "moved":
      return desk.store.write([], (db) =>
        db.exec(`UPDATE day SET date = '2026-0${1 + (n % 9)}-11' WHERE id = ${earlier}`),
      );
    case "then":
      return recordThen();
    case "rolledBack":
      return recordThen();
    case "thenVoid":
      return desk.store.write([], (db) => voidAttempt(db, standing(earlier)[n]?.id ?? "", { ...why, at }));
    case "joined":
      return organiser.people.join({ stepId: randomUUID(), keptId: athleteId, goneId: guest, by: "QA" });
    case "erased": {
      const typed = athleteById(desk.store.db, athleteId)?.name ?? "";
      return n > 8 ? null : organiser.people.erase({ erasureId: randomUUID(), athleteId, typed, by: "QA" });
    }
    case "sheet": {
      const { league = "", number = "" } = athleteById(desk.store.db, athleteId) ?? {};
      const row = `${league},${number},2026-03-${10 + (n % 9)},core,${70 + n}`;
      return takeSheet(day, "past", `league,number,date,test,mark\n${row}\n`);
    }
    case "undone": {
      const [newest] = await organiser.people.steps({ of: n % 2 === 0 ? "imports" : "identity" });
      return organiser.people.undo({ stepId: newest?.id ?? "", by: "QA" });
    }
    case "hidden":
      return day.consent(bib, n % 2 === 0 ? "hidden" : "name");
    case "left":
      return setState(day, dayId, athleteId, "withdrawn", bib);
    case "closed":
      await (n % 2 === 0 ? organiser.day.close({ dayId }) : null);
      return organiser.day.reopen({ dayId, id: randomUUID(), reason: "Late papers", by: "QA" });
    default:
      throw new Error(`No step ${String(kind)}.`);
  }
}

/** All that is told of a day from its news. */
function tellAll(db: ReadableDb, dayId: number): unknown {
  const day = dayById(db, dayId);
  if (day === undefined) throw new Error("The day is gone.");
  return {
    marks: tellMarks(db, day),
    board: toldOnBoard(db, day, "cm"),
    cards: cardsOf(db, day, { kind: "all" }, "cm"),
    noise: viewNoise(db, "cm"),
    // Of whom a place would be told: too few are here for a place itself.
    others: testCodes.map((code) => {
      const name = fingerprint(code, protocolOf(code).variants[0] ?? "", defaultParameters(code));
      const here = marksHere(db, day, { test: code, fingerprint: name, category: "women" });
      return Object.values(here).map((marks) =>
        allAthletes(db).map(({ id }) => [null, 25, 35].map((from) => counted(marks.others(id, from)))),
      );
    }),
  };
}

/** How many marks there are below and up to some heights, which no two of different marks share for all tests. */
function counted({ n, below, upTo }: MarksInOrder) {
  return [n, ...[20, 2500, 3_800, 70_000, 365_000].flatMap((value) => [below(value), upTo(value)])];
}

/** The same, of a store of the same rows that has told nothing yet. */
function tellAnew(db: ReadableDb, dayId: number): unknown {
  const bytes = (connectionOf(db) as InMemory).serialize();
  const fresh = createStore(connectBytes(bytes, { file: ":memory:" }));
  const told = tellAll(fresh.db, dayId);
  fresh.close();
  return told;
}

test("what is kept of a day's news is what is read anew, in any order of entries, corrections, voids, sheets, days, joins, undoing and erasures", async () => {
  const taken = new Map<string, number>();
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 12, maxLength: 24 }), async (steps) => {
      const { day, guest } = await hall();
      const { db } = day.desk.store;
      tellAll(db, day.dayId);
      for (const done of steps) {
        const failed = await take({ day, guest }, done).then(
          () => false,
          () => true,
        );
        if (!failed) taken.set(done.kind, (taken.get(done.kind) ?? 0) + 1);
        // What was done is beside what is told of it, for whoever reads a failure.
        expect([done, tellAll(db, day.dayId)]).toEqual([done, tellAnew(db, day.dayId)]);
      }
      day.desk.close();
    }),
    { numRuns: 8 },
  );
  // Not only refusals: most of the kinds were taken.
  expect(taken.size).toBeGreaterThan(12);
});
