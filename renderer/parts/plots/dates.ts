const dayMs = 86_400_000;
/** Months from one tick to the next, for a time span too long without ticks between its ends. */
const monthSteps = [1, 3, 6, 12, 24, 60, 120] as const;
/** Smallest distance of a tick from an end, as a share of the time; a nearer one would crowd it. */
const tooNear = 0.25;

/** Least width of a time axis with anything written between its ends, and the width that each word there takes, in px. */
const leastWidth = 380;
const widthOfTick = 260;

/** Returns how many ticks between its ends a time axis of that width, in px, has room for, at most `most`. */
export function ticksBetween(width: number, most: number): number {
  return width < leastWidth ? 0 : Math.min(most, Math.floor(width / widthOfTick));
}

/** A tick of the time axis: a full day at the ends, a month or a year between them. */
export interface DateTick {
  readonly at: Date;
  readonly form: "day" | "month" | "year";
}

/** Returns the instant at which axes put a calendar day (ISO 8601). */
export function instantOf(date: string): Date {
  return new Date(`${date}T00:00:00Z`);
}

/** Returns the first and the last day and, where there is room, at most `between` months or years between them. */
export function dateTicks(first: string, last: string, between: number): DateTick[] {
  const [start, end] = [instantOf(first), instantOf(last)];
  const ends: DateTick[] =
    first === last
      ? [{ at: start, form: "day" }]
      : [
          { at: start, form: "day" },
          { at: end, form: "day" },
        ];
  const span = end.getTime() - start.getTime();
  const from = start.getTime() + span * tooNear;
  const to = end.getTime() - span * tooNear;
  for (const step of monthSteps) {
    const inner = monthStarts(start, end, step).filter((at) => at.getTime() > from && at.getTime() < to);
    if (inner.length > between) continue;
    return [
      ...ends,
      ...inner.map((at) => ({ at, form: step >= 12 ? ("year" as const) : ("month" as const) })),
    ];
  }
  return ends;
}

/** Returns the first days of every `step`-th month, counted from January, from one day to another. */
function monthStarts(start: Date, end: Date, step: number): Date[] {
  const months = (day: Date) => day.getUTCFullYear() * 12 + day.getUTCMonth();
  const first = Math.ceil(months(start) / step);
  const count = Math.floor(months(end) / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => monthStart((first + index) * step));
}

/** Returns the first day of a month, numbered from January of the year 0. */
function monthStart(month: number): Date {
  const day = new Date(0);
  day.setUTCFullYear(Math.floor(month / 12), month % 12, 1);
  return day;
}

/** Returns the range of the time axis: the days with margins at both ends; around one day alone, three months. */
export function dateRange(first: string, last: string): readonly [Date, Date] {
  const [start, end] = [instantOf(first).getTime(), instantOf(last).getTime()];
  const room = end > start ? (end - start) * 0.07 : 45 * dayMs;
  return [new Date(start - room), new Date(end + room)];
}
