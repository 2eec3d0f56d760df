/**
 * What a whole day moves for everybody, such as a cold floor, another judge or a metronome: nobody knows it of the day
 * that is judged, so that only how large it mostly is goes into a verdict.
 */
export interface HallShift {
  /** The variance between days, in squares of the typical error: the mean of all likely ones. */
  readonly variance: number;
  /**
   * The variance that it exceeds with a chance of one in ten at most. No number of athletes averages a day out, so that
   * means of many are judged by it, and not by the likely one.
   */
  readonly atMost: number;
  /** Number of days behind it; 0 while it is an assumption. */
  readonly days: number;
}

/**
 * What a hall assumes that has not two days to compare: days that differ with an SD of 0.3 typical errors. It is the least with which days of half a typical error make no more than 3.5 % false clear gains; it costs three
 * points of the power in a calm hall, until that hall's days say so (`tests/checks/shared-simulation` has both sides). At
 * most, half a typical error. Ours, no source.
 */
export const assumedHall: HallShift = Object.freeze({ variance: 0.09, atMost: 0.25, days: 0 });

/** Days that move nobody: for what is worked out from two marks alone. */
export const calmHall: HallShift = Object.freeze({ variance: 0, atMost: 0, days: 0 });
