import type { Change } from "../../../../electron/domain/plan/told.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import type { WhatIf } from "../types.ts";

/** Minutes below which nobody would move a table: from here on a change is worth a line. */
const leastMinutes = 2;
/** A pair has a line of its own where it saves so much more than the better of its two. */
const moreThanOne = { minutes: 3, times: 1.15 };

/** What an organiser could change, sorted by what it saves, and what they need not. */
export interface Worth {
  /** One or two changes each, that which saves most first. */
  readonly helps: readonly WhatIf[];
  /** Single changes after which the day ends no earlier, or not surely. */
  readonly nothing: readonly WhatIf[];
}

/**
 * Separates what helps from what does not. Something helps where the day of the middle ends two minutes earlier and the
 * spread to the worse side is smaller than that gain. Leagues that come at other times help too where the day ends no later and
 * waits fall by a minute. A pair is left out where one of the two alone does nearly as much.
 */
export function worthOf(whatIfs: readonly WhatIf[]): Worth {
  const singles = whatIfs.filter(({ changes }) => changes.length === 1);
  const pairs = whatIfs.filter(({ changes }) => changes.length > 1 && isMore(changes, singles, whatIfs));
  return {
    helps: [...singles.filter(helpsAlone), ...pairs.filter(isEarlier)].sort(
      (a, b) => b.saved.middle - a.saved.middle,
    ),
    nothing: singles.filter((each) => !helpsAlone(each)),
  };
}

/** Returns of changes at the same stations that which saves most: whether by a place or by a lane comes second. */
export function bestOfStations(helps: readonly WhatIf[]): WhatIf[] {
  const whereOf = ({ changes }: WhatIf) =>
    changes
      .map((change) => ("test" in change ? change.test : change.kind))
      .sort()
      .join(" ");
  return helps.filter((each) => helps.find((other) => whereOf(other) === whereOf(each)) === each);
}

/** Single changes that bring nothing: stations at which more room of either kind does, and the others. */
interface ForNothing {
  readonly rooms: readonly TestCode[];
  readonly others: readonly WhatIf[];
}

/** Gathers the changes that bring nothing by station, where neither a place nor a lane does. */
export function roomsOf(nothing: readonly WhatIf[]): ForNothing {
  const tests = nothing.flatMap(({ changes }) => changes.flatMap(testOf));
  const rooms = [...new Set(tests.filter((test, index) => tests.indexOf(test) < index))];
  const isOfRoom = ({ changes }: WhatIf) => changes.flatMap(testOf).some((test) => rooms.includes(test));
  return { rooms, others: nothing.filter((each) => !isOfRoom(each)) };
}

function testOf(change: Change): TestCode[] {
  return "test" in change ? [change.test] : [];
}

/** Returns whether one more place or lane at a station, alone, is among what helps. */
export function isHelpedByRoom(station: TestCode, whatIfs: readonly WhatIf[]): boolean {
  return worthOf(whatIfs).helps.some(
    ({ changes }) => changes.length === 1 && changes.flatMap(testOf).includes(station),
  );
}

/** Returns whole minutes; of half ones the later. */
export function minutesOf(seconds: number): number {
  return Math.round(seconds / 60);
}

function helpsAlone(whatIf: WhatIf): boolean {
  return isEarlier(whatIf) || isCalmer(whatIf);
}

/** Returns whether the day surely ends earlier by so much that it is worth a line. */
export function isEarlier({ saved }: Pick<WhatIf, "saved">): boolean {
  return minutesOf(saved.middle) >= leastMinutes && saved.middle + saved.from >= 0;
}

/** A day that ends later has no times. */
function isCalmer({ waves }: WhatIf): boolean {
  return waves !== undefined && minutesOf(waves.wait) < minutesOf(waves.waitAsGiven);
}

function isMore(changes: readonly Change[], singles: readonly WhatIf[], all: readonly WhatIf[]): boolean {
  const own = all.find((each) => each.changes === changes)?.saved.middle ?? 0;
  const alone = Math.max(
    0,
    ...singles
      .filter(({ changes: [one] }) => one !== undefined && changes.some((each) => isSame(each, one)))
      .map(({ saved }) => saved.middle),
  );
  return own >= alone + moreThanOne.minutes * 60 && own >= alone * moreThanOne.times;
}

function isSame(a: Change, b: Change): boolean {
  return JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());
}
