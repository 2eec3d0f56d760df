import { heldOn } from "../../domain/day/dates.ts";
import { mayBeUnder18 } from "../../domain/people/age.ts";
import type { Runner } from "../../domain/queue/queue.ts";
import { isFinished } from "../../domain/queue/tally.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { agesOf, type Present } from "../../store/reads/present.ts";
import { calls } from "../../store/tables/calls.ts";
import type { Day } from "../../store/tables/days.ts";
import type { EntrantState } from "../../store/tables/entrants.ts";
import { isoDate } from "../door/calendar.ts";
import type { MarkWithNews } from "../marks/marks.ts";
import { doubtedMarks } from "../marks/unanswered.ts";

/** A task for somebody, and the screen where it is done. */
export interface Need {
  readonly sentence: Sentence;
  readonly to: string;
}

/** The input of the needs. */
export interface Floor {
  readonly people: readonly Present[];
  readonly runners: readonly Runner[];
  readonly marks: readonly MarkWithNews[];
  readonly counts: Readonly<Record<EntrantState, number>>;
  /** ISO 8601 instant. */
  readonly now: string;
}

/** Minutes after which a call or a begun test raises a question. */
const patience = 5;
/** Most needs listed of one kind; more become a count. */
const mostOfAKind = 3;

/** Returns what needs the organiser now, most pressing first. */
export function needsOf(db: ReadableDb, day: Day, floor: Floor): Need[] {
  if (day.state === "closed") return [];
  if (floor.people.length === 0) return [{ sentence: sentence("overview.nobodyListed"), to: "/sheets" }];
  if (day.state === "planned") return [];
  return [
    ...uncalled(db, day, floor),
    ...doubted(db, day, floor),
    ...guardians(db, day, floor),
    ...begun(floor),
    ...progress(floor),
  ];
}

function minutesSince(at: string, now: string): number {
  return Math.floor((Date.parse(now) - Date.parse(at)) / 60_000);
}

function uncalled(db: ReadableDb, day: Day, { people, now }: Floor): Need[] {
  return calls(db, day.id).flatMap(({ athleteId, test, at }) => {
    const minutes = minutesSince(at, now);
    const who = people.find((present) => present.athleteId === athleteId);
    if (who === undefined || minutes < patience) return [];
    const values = { name: who.name, bib: who.bib ?? "", minutes };
    return { sentence: sentence(`test.${test}.called`, values), to: `/station/${test}` };
  });
}

/** Returns a need for each of some athletes; where they are many, one for all. */
function byNameOrCount(
  some: readonly Present[],
  one: (who: Present) => Need,
  all: (count: number) => Need,
): Need[] {
  return some.length > mostOfAKind ? [all(some.length)] : some.map(one);
}

/** Returns needs for live results in doubt: the big screen waits with them until somebody has looked again. */
function doubted(db: ReadableDb, day: Day, { people, marks }: Floor): Need[] {
  const byTest = Map.groupBy(
    doubtedMarks(db, day, () => marks),
    ({ mark }) => mark.test,
  );
  return [...byTest].flatMap(([test, some]) => {
    const to = `/station/${test}`;
    const theirs = some.flatMap(({ mark }) =>
      people.filter((present) => present.athleteId === mark.athleteId),
    );
    return byNameOrCount(
      theirs,
      ({ name, bib }) => ({ sentence: sentence("overview.doubt", { name, bib: bib ?? "" }), to }),
      (count) => ({ sentence: sentence("overview.doubts", { count, test }), to }),
    );
  });
}

function guardians(db: ReadableDb, day: Day, { runners, people, now }: Floor): Need[] {
  const date = heldOn(day, isoDate(new Date(now)));
  const ages = agesOf(db, day.id);
  const minors = runners.flatMap(({ athleteId }) => {
    const of = ages.get(athleteId);
    const asks = of !== undefined && mayBeUnder18(of.birthYear, date) && !of.guardianConsent;
    return asks ? people.filter((present) => present.athleteId === athleteId) : [];
  });
  return byNameOrCount(
    minors,
    ({ athleteId, name, bib }) => ({
      sentence: sentence("overview.guardian", { name, bib: bib ?? "" }),
      to: `/athletes/${athleteId}`,
    }),
    (count) => ({ sentence: sentence("overview.guardians", { count }), to: "/athletes" }),
  );
}

/** Returns needs for tests of several attempts that were begun and left, such as a jump in one direction alone. */
function begun(floor: Floor): Need[] {
  return testCodes.flatMap((test) => begunOf(floor, test));
}

function begunOf({ marks, runners, people, now }: Floor, test: TestCode): Need[] {
  const half = marks.filter(({ mark, test: of }) => of === test && mark.state === "incomplete");
  const lying = half.flatMap(({ athleteId }) => {
    const last = runners.find((runner) => runner.athleteId === athleteId)?.lastDone.get(test);
    const stale = last !== undefined && minutesSince(last, now) >= patience;
    return stale ? people.filter((present) => present.athleteId === athleteId) : [];
  });
  const to = `/station/${test}`;
  return byNameOrCount(
    lying,
    ({ name, bib }) => ({ sentence: sentence(`test.${test}.begun`, { name, bib: bib ?? "" }), to }),
    (count) => ({ sentence: sentence(`test.${test}.allBegun`, { count }), to }),
  );
}

function progress({ runners, counts }: Floor): Need[] {
  const { expected, testing } = counts;
  if (testing === 0 && expected > 0) return [{ sentence: sentence("overview.nobodyIn"), to: "/check-in" }];
  if (testing === 0 || !runners.every(isFinished)) return [];
  if (expected === 0) return [{ sentence: sentence("overview.allFinished"), to: "/day" }];
  return [{ sentence: sentence("overview.onlyExpected", { count: expected }), to: "/check-in" }];
}
