import type { TestCode } from "../tests/registry.ts";

/**
 * The hall as a plan sees it: a hybrid flow shop in the words of scheduling. Five stages in a held order, each with
 * places side by side; batches where a heat starts together; a least time between two tests; arrivals. All times are
 * seconds; those of a plan count from the day's beginning, those of a forecast from now.
 */
export interface Hall {
  /** In the held order of the tests. */
  readonly stations: readonly Station[];
  /** How many places can run at once in the whole hall, as each needs a judge; null where all can. */
  readonly judges: number | null;
  /** The least time between an athlete's two tests. */
  readonly rest: number;
  /** Times in which no heat and no turn starts. */
  readonly breaks: readonly Break[];
  /** True where athletes may do the three tests in the middle in any order; the first and the last stay. */
  readonly middleIsFree: boolean;
}

export interface Station {
  readonly test: TestCode;
  /** Heats or turns that run side by side. */
  readonly places: number;
  /** Athletes who start together at one place; 1 where they go one by one. */
  readonly lanes: number;
  /** From an athlete's start to their end. A heat lasts as long as its slowest. */
  readonly turn: Spread;
  /** From a call at a free place to the start there: walking up, setting up, a word with the judge. */
  readonly changeOver: Spread;
}

/** A time that varies, as a lognormal distribution. */
export interface Spread {
  readonly median: number;
  /** Standard deviation of its natural logarithm; 0 for a time that never varies. */
  readonly sigma: number;
}

export interface Break {
  readonly from: number;
  readonly until: number;
}

/** Somebody who is here, or on the list. */
export interface Athlete {
  readonly id: number;
  readonly league: string;
  /** The window in which they arrive, any moment of it alike; it may be over for somebody who is late, too. */
  readonly arrives: Break;
  /** Chance that somebody on the list comes at all, as seen before the day; 1 for somebody who is here, and only then. */
  readonly comes: number;
  /** The tests still to do, in the held order; without those that are skipped. */
  readonly left: readonly TestCode[];
  /** From when on they are rested; in the past or 0 without a test before. */
  readonly rested: number;
}

/**
 * A heat, or one athlete's turn, that has started and not ended: as a live heat tells it; where results are typed, as the
 * call does. Its athletes are in a moment's `athletes` too, with this test still to do.
 */
export interface Running {
  readonly test: TestCode;
  readonly athletes: readonly number[];
  /** When it started: 0 or before. */
  readonly since: number;
}

/** A turn of today that has ended and whose time is known: paper that was keyed without a time is not among them. */
export interface DoneTurn {
  readonly athlete: number;
  readonly test: TestCode;
  /** When it started, where a heat tells. */
  readonly from: number | null;
  readonly until: number;
  /** The same for all who started together; null where nobody knows. */
  readonly heat: string | null;
}

/** What a station's times are known by from earlier days of this store. */
export interface Known {
  readonly test: TestCode;
  readonly turn: Spread;
  readonly changeOver: Spread;
  /** Number of turns they are of. */
  readonly turns: number;
}

/** The day at one moment, which is time 0, as far as the store knows it. */
export interface Moment {
  readonly hall: Hall;
  /** Everybody who still has a test to do: here, or expected. Those who have left are not in it. */
  readonly athletes: readonly Athlete[];
  readonly running: readonly Running[];
  /** In the order in which they ended; times are 0 or before. */
  readonly done: readonly DoneTurn[];
  /** True before the day: nobody is missing yet, and whoever is to come before it begins is there when it does. */
  readonly isAhead?: boolean;
}

/** An earlier day of this store, from which stations' times are learnt. */
export interface PastDay {
  /** With the assumed times; its places and lanes are those of that day. */
  readonly hall: Hall;
  /** In the order in which they ended, in seconds of one clock of that day. */
  readonly done: readonly DoneTurn[];
  /** When athletes were checked in, by the same clock; who is missing has no first wait. */
  readonly arrived: ReadonlyMap<number, number>;
}
