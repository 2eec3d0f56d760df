import { mayBeUnder18 } from "../../domain/people/age.ts";
import { seededChance, shuffled } from "../../domain/privacy/chance.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { type DemoRow, type DemoRows, testOf, whoOf } from "./demo-sheets.ts";

/** Minutes between two people at the table, from check-in to the first test, and from one test to the next. */
const betweenArrivals = 2.8;
const toFirstTest = 14;
const betweenTests = 24;
/** Minutes since the day was opened: by then about two thirds is done. */
export const openSince = 158;

/** Somebody of the demonstration who came to the table, so many minutes after the day was opened. */
export interface Arrival {
  readonly who: string;
  readonly minute: number;
  /** Tests left out after the questions at the table; all of them: here and not testing. */
  readonly leaveOut: readonly TestCode[];
}

/** Results that were keyed in the same minute. */
interface Batch {
  readonly minute: number;
  readonly rows: readonly DemoRow[];
}

/** What has happened in the demonstration's hall until now. Everybody else is still expected. */
export interface Cast {
  readonly arrivals: readonly Arrival[];
  readonly batches: readonly Batch[];
  readonly noShow: string | undefined;
  /** Who stopped early, and at which minute they said so. */
  readonly withdrawn: readonly { readonly who: string; readonly minute: number }[];
  readonly skips: { readonly who: string | undefined; readonly test: TestCode };
}

/**
 * Decides who is where, so that every screen has something to show. `today` is ISO 8601. Those who may be under 18 and
 * bring no guardian's consent are still expected: that is a question for the table.
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

/** Places in the order of arrival of those with whom something else happens: scenes, so they name tests. */
const leavesOut = { place: 20, test: "vertical" } as const;
const skips = { place: 26, test: "endurance" } as const;

/** As cars from three towns arrive. */
function mixed(people: Iterable<string>): string[] {
  return shuffled([...people], seededChance([3, 14, 15, 92]));
}

function needsGuardian(row: DemoRow, today: string): boolean {
  return mayBeUnder18(Number(row.birth_year), today) && row.guardian_consent !== "yes";
}

/** Waiting for their first test. */
function justCame(people: readonly string[]): Arrival[] {
  return people.map((who, index) => ({ who, minute: openSince - 9 + 3 * index, leaveOut: [] }));
}

/** Here, and not testing. */
function visitors(people: readonly string[]): Arrival[] {
  return people.map((who) => ({ who, minute: openSince - 40, leaveOut: testCodes }));
}

/** The minute in which somebody does a test. */
function minuteOf({ minute }: Arrival, test: TestCode): number {
  return Math.ceil(minute + toFirstTest + betweenTests * testCodes.indexOf(test));
}

/** Whose sheet ends before the last test has stopped by the time that the next one would be. */
function stopped(results: readonly DemoRow[], arrival: Arrival): { who: string; minute: number }[] {
  const done = new Set(results.filter((row) => whoOf(row) === arrival.who).map(testOf));
  const next = testCodes.find((test) => !done.has(test) && !arrival.leaveOut.includes(test));
  if (next === undefined) return [];
  const minute = minuteOf(arrival, next);
  return minute < openSince ? [{ who: arrival.who, minute }] : [];
}

/** What is keyed by now, in the order of the day. */
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
