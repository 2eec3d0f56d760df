import { nextTest } from "../../domain/queue/order.ts";
import { type Runner, waitFor } from "../../domain/queue/queue.ts";
import { isFinished, queuePlaceOf, tally } from "../../domain/queue/tally.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { everybody, type Present } from "../../store/reads/present.ts";
import { calls } from "../../store/tables/calls.ts";
import type { Day } from "../../store/tables/days.ts";
import { countStates } from "../../store/tables/entrants.ts";
import { liveHeats } from "../../store/tables/heats.ts";
import { requireDay } from "../door/at-hand.ts";
import { allow } from "../door/trpc.ts";
import { isOver } from "../heat/over.ts";
import { type HeatAtHand, heatsAtHand } from "../lanes/at-hand.ts";
import { load } from "../lanes/load.ts";
import { stationPersonOf } from "../marks/attempts.ts";
import { tellMarks } from "../marks/marks.ts";
import { queueOf, runnersOf } from "../station/runners.ts";
import { type Floor, needsOf } from "./needs.ts";

/** Returns the organiser's overview: attendance, the progress of each test, and what needs a hand. */
export const overview = allow("organiser").query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const day = requireDay(db);
  return overviewOf(db, day, desk.now().toISOString());
});

function overviewOf(db: ReadableDb, day: Day, now: string) {
  const people = everybody(db, day.id);
  const runners = runnersOf(db, day, now);
  const marks = tellMarks(db, day);
  const counts = countStates(people);
  const heats = heatsAtHand(db, day);
  const floor: Floor = { people, runners, marks, counts, now };
  return {
    title: day.title,
    date: day.date,
    state: day.state,
    counts,
    /** Number of athletes who test and have no test left. */
    finished: runners.filter(isFinished).length,
    leagues: leaguesOf(people, runners),
    tests: testCodes.map((test) => ({
      ...testOf(db, day, test, { runners, marks, now }),
      heats: heatsOf(heats, people, test),
    })),
    needs: needsOf(db, day, floor),
  };
}

function leaguesOf(people: readonly Present[], runners: readonly Runner[]) {
  const finished = new Set(runners.filter(isFinished).map(({ athleteId }) => athleteId));
  return [...Map.groupBy(people, ({ league }) => league)]
    .map(([league, some]) => ({
      league,
      counts: countStates(some),
      finished: some.filter(({ athleteId }) => finished.has(athleteId)).length,
    }))
    .sort((a, b) => a.league.localeCompare(b.league, "en"));
}

function testOf(
  db: ReadableDb,
  day: Day,
  test: TestCode,
  { runners, marks, now }: Pick<Floor, "runners" | "marks" | "now">,
) {
  const own = marks.filter((mark) => mark.test === test);
  const begun = own.filter(({ mark }) => mark.state === "incomplete").map(({ athleteId }) => athleteId);
  const waits = queueOf(db, day, test, now).map(({ waitingSince }) => waitingSince);
  return {
    ...tally(test, runners, new Set(begun)),
    bests: own.filter(({ news }) => news?.standing === "best").length,
    firsts: own.filter(({ news }) => news?.standing === "first").length,
    /** Start of the longest wait. */
    longestWait: waits.sort()[0] ?? null,
  };
}

/** Returns all heats of a test that are gathered or run, at the table and at every device of its station. */
function heatsOf(heats: readonly HeatAtHand[], people: readonly Present[], test: TestCode) {
  const bibs = new Map(people.map(({ athleteId, bib }) => [athleteId, bib]));
  return heats
    .filter((heat) => heat.test === test)
    .map(({ heatId, holder, device, state, athleteIds }) => ({
      ...{ heatId, state, isTable: holder === null },
      /** The device's name; null for the table, and for a device that is no longer joined. */
      who: device,
      /** Of whom its lanes hold now, by lane. */
      bibs: athleteIds.map((athleteId) => bibs.get(athleteId) ?? null),
    }));
}

/** Returns the state of everybody who tests today in every test, by bib. */
export const floor = allow("organiser").query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const day = requireDay(db);
  const people = new Map(everybody(db, day.id).map((who) => [who.athleteId, who]));
  const called = new Map(calls(db, day.id).map((call) => [call.athleteId, call.test]));
  return runnersOf(db, day, desk.now().toISOString()).flatMap((runner) => {
    const who = people.get(runner.athleteId);
    if (who === undefined) return [];
    const { done, leftOut } = runner;
    const next = nextTest(done, leftOut);
    const wait = next === null ? null : waitFor(next, runner, day.restMinutes);
    return {
      who: stationPersonOf(who),
      /** In the order of the tests. */
      tests: testCodes.map((test) => ({ test, place: queuePlaceOf(test, done, leftOut) })),
      next,
      /** The test they are called to, if any. */
      calledTo: called.get(runner.athleteId) ?? null,
      /** Start of the wait for the next test, and end of the rest; null when finished. */
      waitingSince: wait?.waitingSince ?? null,
      readyAt: wait?.readyAt ?? null,
    };
  });
});

/** Names that are told of those who are missing; the others are a number. */
const told = 4;

/** Returns what the day at hand lacks before it is closed: athletes not come, athletes waiting, heats that are not over. */
export const beforeClosing = allow("organiser").query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const day = requireDay(db);
  const now = desk.now().toISOString();
  const people = everybody(db, day.id);
  const nameOf = new Map(people.map(({ athleteId, name }) => [athleteId, name]));
  const waiting = testCodes.map((test) => {
    const names = queueOf(db, day, test, now).map(({ athleteId }) => nameOf.get(athleteId) ?? "");
    return { test, ...peopleOf(names) };
  });
  return {
    expected: peopleOf(people.filter(({ state }) => state === "expected").map(({ name }) => name)),
    waiting: waiting.filter(({ count }) => count > 0),
    /** Tests with a heat at hand in which somebody is not done yet, at the table or at any device. */
    heats: [
      ...new Set(
        liveHeats(db, day.id)
          .filter((heat) => !isOver(load(db, heat)))
          .map(({ test }) => test),
      ),
    ],
  };
});

function peopleOf(names: readonly string[]) {
  return { count: names.length, names: names.slice(0, told) };
}
