import type { TestCode } from "../tests/registry.ts";

/** A value by simulated days: a tenth of them lie below `from`, half below `middle`, nine tenths below `until`. */
export interface Span {
  readonly from: number;
  readonly middle: number;
  readonly until: number;
}

/** What is told of a day before it begins. Times are seconds from its beginning. */
export interface DayPlan {
  /** When the last athlete is done. */
  readonly end: Span;
  /** The station that holds the day up: the one whose relief would end it earliest; null when none does. */
  readonly holdsUp: TestCode | null;
  /** Of athletes who are there and rested, until they start; over all their tests, in a day of the middle. */
  readonly waits: { readonly mean: number; readonly longest: number };
  readonly waves: readonly Wave[];
  readonly stations: readonly StationLoad[];
  /** One simulated day, that whose end lies in the middle: what the picture and the timetable show. */
  readonly turns: readonly PlannedTurn[];
}

/** Athletes who are to be there at the same time. */
export interface Wave {
  readonly league: string;
  readonly athletes: readonly number[];
  /** When they are to be there. */
  readonly at: number;
  readonly firstStart: Span;
  readonly lastDone: Span;
}

/** How full a station is over time, as means of all simulated days. */
export interface StationLoad {
  readonly test: TestCode;
  /** Seconds of one step. */
  readonly step: number;
  /** Of each step: the part of its places that are in use, 0 to 1. */
  readonly used: readonly number[];
  /** Of each step: how many wait for it, rested. */
  readonly waiting: readonly number[];
}

export interface PlannedTurn {
  readonly athlete: number;
  readonly test: TestCode;
  readonly place: number;
  readonly from: number;
  readonly until: number;
}

/** A change that is in the organiser's hand. */
export type Change =
  | { readonly kind: "place"; readonly test: TestCode }
  | { readonly kind: "lane"; readonly test: TestCode }
  | { readonly kind: "judge" }
  | { readonly kind: "rest"; readonly lessSeconds: number }
  | { readonly kind: "waves" }
  | { readonly kind: "middle" };

/** What one or two changes would bring, on the same simulated days. */
export interface WhatIf {
  readonly changes: readonly Change[];
  /** Seconds by which the day ends earlier; negative where it ends later. */
  readonly saved: Span;
  /** Where leagues would come at other times: at which, and how they wait then; left out where the day would end later. */
  readonly waves?: WavesToCome;
}

/** Times at which leagues would come instead of those that are given, and what becomes of their waits. */
export interface WavesToCome {
  readonly times: readonly LeagueTime[];
  /** Of athletes who are there and rested, until they start: seconds on average over all their tests, then and as given. */
  readonly wait: number;
  readonly waitAsGiven: number;
}

/** When a league is there: its first athlete at `from`, its last at `until`, in seconds from the day's beginning. */
export interface LeagueTime {
  readonly league: string;
  readonly from: number;
  readonly until: number;
}

/** What is told of the rest of a day. Times are seconds from now. */
export interface Forecast {
  readonly end: Span;
  readonly holdsUp: TestCode | null;
  /** The one change that helps most by enough to be worth a word; null when none does. */
  readonly suggestion: WhatIf | null;
}

/** How much of a long calculation is done, 0 to 1: what its generators yield, so that a caller can show it or stop. */
export type Progress = number;
