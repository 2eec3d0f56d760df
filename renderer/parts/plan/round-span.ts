interface Span {
  readonly from: string;
  readonly until: string;
}

const minute = 60_000;
/** Minutes that a long span is rounded to, and the length from which on it is long: nobody plans a hall by the minute. */
const step = 5;
const long = 15;

/** Rounds a span of instants (ISO 8601) outwards, to whole minutes or steps of five; what has passed begins now. */
export function roundSpan({ from, until }: Span, now: Date): Span {
  const begins = Math.max(Date.parse(from), now.getTime());
  const ends = Math.max(Date.parse(until), begins);
  const unit = (ends - begins >= long * minute ? step : 1) * minute;
  return {
    from: new Date(Math.floor(begins / unit) * unit).toISOString(),
    until: new Date(Math.ceil(ends / unit) * unit).toISOString(),
  };
}
