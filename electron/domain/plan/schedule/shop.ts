/**
 * A hall as the scheduler works with it: a hybrid flow shop in numbers alone, all times in seconds. A job is an athlete,
 * a stage a station. With one lane, no change-over, rest, arrivals, breaks or judges it is the problem that is published.
 */
export interface Shop {
  readonly jobs: number;
  readonly stages: number;
  /** Heats that run side by side, by stage. */
  readonly places: Int32Array;
  /** Athletes who start together at one place, by stage. */
  readonly lanes: Int32Array;
  /** From the end of a heat to the next start at its place, by stage. */
  readonly changeOver: Float64Array;
  /** Of job and stage at `job * stages + stage`; below 0 where the test is left out. */
  readonly times: Float64Array;
  /** The least time between a job's end at one stage and its start at the next. */
  readonly rest: number;
  /** When each job is there, and rested. */
  readonly release: Float64Array;
  /** From and until in turn, none after the next: no heat starts from the one to before the other. */
  readonly breaks: Float64Array;
  /** How many places can be in use at once, as each needs a judge until its change-over is done; 0 where all can. */
  readonly judges: number;
}

/** What happens in a shop, turn by turn, at `job * stages + stage`. */
export interface Schedule {
  /** Below 0 where the test is left out. */
  readonly starts: Float64Array;
  readonly places: Int32Array;
  /** When the last job is done. */
  readonly end: number;
}

/** Returns a published problem as a shop: stages with so many places, and a row of times for each job. */
export function plainShop(places: readonly number[], rows: readonly (readonly number[])[]): Shop {
  const stages = places.length;
  return {
    jobs: rows.length,
    stages,
    places: Int32Array.from(places),
    lanes: new Int32Array(stages).fill(1),
    changeOver: new Float64Array(stages),
    times: Float64Array.from(rows.flat()),
    rest: 0,
    release: new Float64Array(rows.length),
    breaks: new Float64Array(0),
    judges: 0,
  };
}

/** Returns the first moment from `time` on that is in no break. */
export function afterBreaks(breaks: Float64Array, time: number): number {
  let moment = time;
  for (let at = 0; at < breaks.length; at += 2) {
    const until = breaks[at + 1] as number;
    if (moment >= (breaks[at] as number) && moment < until) moment = until;
  }
  return moment;
}

/** Returns whether judges are fewer than places, so that a place may stand for want of one. */
export function judgesBind({ judges, places }: Shop): boolean {
  return judges > 0 && judges < places.reduce((sum, count) => sum + count, 0);
}
