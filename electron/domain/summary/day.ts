import type { MarkNews } from "../statistics/news.ts";
import type { Mark } from "../tests/protocol.ts";
import type { TestCode } from "../tests/registry.ts";

/** The input of a summary. Instants are ISO 8601; values and changes are in the tests' grains. */
export interface SummaryDay {
  readonly state: "planned" | "open" | "closed";
  readonly people: readonly SummaryPerson[];
  readonly marks: readonly SummaryMark[];
  /** Standing or void, in the order of entry. */
  readonly attempts: readonly SummaryAttempt[];
  readonly leftOut: readonly SummaryLeftOut[];
  /** Times from live heats that were not cancelled. */
  readonly laneTimes: readonly LaneTime[];
}

/** An athlete on the day's list. */
export interface SummaryPerson {
  readonly athleteId: number;
  readonly name: string;
  /** As text: 07 is not 7. */
  readonly number: string;
  readonly bib: number | null;
  readonly league: string;
  readonly state: "expected" | "testing" | "not-testing" | "no-show" | "withdrawn";
}

/** The mark of an athlete's attempts in one variant; without news while it is incomplete. */
export interface SummaryMark {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly mark: Mark;
  readonly news: MarkNews | null;
}

export interface SummaryAttempt {
  readonly id: string;
  readonly seq: number;
  readonly athleteId: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly seen: unknown;
  readonly enteredBy: string;
  readonly note: string;
  readonly source: "station" | "sheet" | "heat";
  readonly at: string;
  /** When it was done; null where nobody knows. */
  readonly performed: string | null;
  /** The attempt that this one corrects. */
  readonly replaces: string | null;
  /** The live heat it belongs to. */
  readonly heatId: string | null;
  readonly void: { readonly reason: string; readonly by: string; readonly at: string } | null;
}

/** A skipped test: decided at check-in (no reason is kept), or skipped with a reason. */
interface SummaryLeftOut {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly kind: "readiness" | "skip";
  readonly reason: string;
  readonly decidedBy: string;
}

/** One athlete's working time in a lane, by the monotonic clock. */
export interface LaneTime {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly ms: number;
}

/** Returns the part of a day that concerns these athletes, such as a league's. */
export function partOf(day: SummaryDay, athletes: ReadonlySet<number>): SummaryDay {
  const own = <Row extends { readonly athleteId: number }>(rows: readonly Row[]) =>
    rows.filter(({ athleteId }) => athletes.has(athleteId));
  return {
    state: day.state,
    people: own(day.people),
    marks: own(day.marks),
    attempts: own(day.attempts),
    leftOut: own(day.leftOut),
    laneTimes: own(day.laneTimes),
  };
}
