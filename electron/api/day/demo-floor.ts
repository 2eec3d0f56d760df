import { seededChance, shuffled } from "../../domain/chance.ts";
import { mayBeUnder18 } from "../../domain/people/age.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { type DemoRow, type DemoRows, testOf, whoOf } from "./demo-sheets.ts";

/** Minutes between two people at the table, from check-in to the first test, and from one test to the next. */
const betweenArrivals = 2.8;
const toFirstTest = 14;
const betweenTests = 24;
/** Minutes since the day was opened: time for about two thirds of it. */
export const openSince = 158;

/** An athlete of the demo who came to the table, and the minute since the opening. */
export interface Arrival {
  readonly who: string;
  readonly minute: number;
  /** Tests skipped after the questions at the table; all of them: here and not testing. */
  readonly leaveOut: readonly TestCode[];
}

/** Results entered in the same minute. */
interface Batch {
  readonly minute: number;
  readonly rows: readonly DemoRow[];
}

/** All events in the demo's hall so far. Everybody else is still expected. */
export interface Cast {
  readonly arrivals: readonly Arrival[];
  readonly batches: readonly Batch[];
  readonly noShow: string | undefined;
  /** Athletes who stopped early, and the minute when they said so. */
  readonly withdrawn: readonly { readonly who: string; readonly minute: number }[];
  readonly skips: { readonly who: string | undefined; readonly test: TestCode };
}

/**
 * Decides who is where, so that every screen has something to show. `today` is ISO 8601. Athletes who may be under 18
 * without a guardian's consent are still expected: the table has to ask.
 */
export function castOf({ roster, results }: DemoRows, today: string): Cast {
  const mayTest = new Set(roster.filter((row) => !needsGuardian(row, today)).map(whoOf));
  const measured = new Set(results.map(whoOf));
  const unmeasured = mixed(mayTest).filter((who) => !measured.has(who));
  const order = mixed(measured).filter((who) => mayTest.has(who));
  const tested = order.map(
    (who, index): Arrival => ({
      who,
      minute: index * betweenArrivals,
      leaveOut: index === leavesOut.place ? [leavesOut.test] : [],
    }),
  );
  return {
    arrivals: [...tested, ...justCame(unmeasured.slice(0, 3)), ...visitors(unmeasured.slice(3, 4))],
    batches: batchesOf(results, tested),
    noShow: unmeasured[4],
    withdrawn: tested.flatMap((arrival) => stopped(results, arrival)),
    skips: { who: order[skips.place], test: skips.test },
  };
}

/** Places in the order of arrival of the athletes in special scenes, which name tests. */
const leavesOut = { place: 20, test: "vertical" } as const;
const skips = { place: 26, test: "endurance" } as const;

/** Shuffles people as if they arrived by car from three towns. */
function mixed(people: Iterable<string>): string[] {
  return shuffled([...people], seededChance([3, 14, 15, 92]));
}

function needsGuardian(row: DemoRow, today: string): boolean {
  return mayBeUnder18(Number(row.birth_year), today) && row.guardian_consent !== "yes";
}

/** Returns athletes who wait for their first test. */
function justCame(people: readonly string[]): Arrival[] {
  return people.map((who, index) => ({ who, minute: openSince - 9 + 3 * index, leaveOut: [] }));
}

/** Returns athletes who are here and not testing. */
function visitors(people: readonly string[]): Arrival[] {
  return people.map((who) => ({ who, minute: openSince - 40, leaveOut: testCodes }));
}

/** Returns the minute in which an athlete does a test. */
function minuteOf({ minute }: Arrival, test: TestCode): number {
  return Math.ceil(minute + toFirstTest + betweenTests * testCodes.indexOf(test));
}

/** Returns an arrival as stopped if their sheet ends before a test whose time has come. */
function stopped(results: readonly DemoRow[], arrival: Arrival): { who: string; minute: number }[] {
  const done = new Set(results.filter((row) => whoOf(row) === arrival.who).map(testOf));
  const next = testCodes.find((test) => !done.has(test) && !arrival.leaveOut.includes(test));
  if (next === undefined) return [];
  const minute = minuteOf(arrival, next);
  return minute < openSince ? [{ who: arrival.who, minute }] : [];
}

/** Returns the results entered so far, in the day's order. */
function batchesOf(results: readonly DemoRow[], arrivals: readonly Arrival[]): Batch[] {
  const byWho = new Map(arrivals.map((arrival) => [arrival.who, arrival]));
  const timed = results.flatMap((row) => {
    const arrival = byWho.get(whoOf(row));
    const test = testOf(row);
    if (arrival === undefined || arrival.leaveOut.includes(test)) return [];
    const minute = minuteOf(arrival, test);
    return minute < openSince ? { minute, row } : [];
  });
  return [...Map.groupBy(timed, ({ minute }) => minute)]
    .map(([minute, some]) => ({ minute, rows: some.map(({ row }) => row) }))
    .sort((a, b) => a.minute - b.minute);
}
