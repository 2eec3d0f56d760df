/** A job at two stations with one place each: its time at either, and the least time between them. */
export interface TwoTurns {
  readonly first: number;
  /** From its end at the first to its start at the second. */
  readonly lag: number;
  readonly second: number;
}

/**
 * Returns the order in which two stations end earliest, of all orders that are the same at both: first those with the
 * shorter first side, ascending by it, then the others, descending by their second side, where a side is the time at that
 * station with the lag. Source: Mitten 1959, Management Science 5(3), Sequencing n jobs on two machines with arbitrary
 * time lags; without lags it is the rule of Johnson 1954, Naval Research Logistics Quarterly 1(1) (both from memory, held
 * against all orders in tests/checks).
 */
export function twoStationOrder(turns: readonly TwoTurns[]): number[] {
  const first = (at: number) => (turns[at]?.first ?? 0) + (turns[at]?.lag ?? 0);
  const second = (at: number) => (turns[at]?.second ?? 0) + (turns[at]?.lag ?? 0);
  const all = turns.map((_, at) => at);
  return [
    ...all.filter((at) => first(at) <= second(at)).sort((a, b) => first(a) - first(b)),
    ...all.filter((at) => first(at) > second(at)).sort((a, b) => second(b) - second(a)),
  ];
}
