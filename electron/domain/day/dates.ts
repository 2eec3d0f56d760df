/** Days from today up to which a date is not questioned. Our own choice: a Sunday is prepared on Friday. */
const nearDays = 2;

/** The distance of a date from today, as people say it: a negative amount is in the past. */
export interface Distance {
  readonly amount: number;
  readonly unit: "day" | "week" | "month" | "year";
}

const msOfDay = 86_400_000;

/** The distance of a date that lies more than {@link nearDays} from today, or null for one that is near (both ISO 8601). */
export function farFrom(date: string, today: string): Distance | null {
  const days = Math.round((Date.parse(date) - Date.parse(today)) / msOfDay);
  return Math.abs(days) <= nearDays ? null : roughly(days);
}

/** The unit grows with the distance, so that the number stays one that people grasp. */
function roughly(days: number): Distance {
  const far = Math.abs(days);
  if (far < 14) return { amount: days, unit: "day" };
  if (far < 60) return { amount: Math.round(days / 7), unit: "week" };
  if (far < 548) return { amount: Math.round(days / 30.44), unit: "month" };
  return { amount: Math.round(days / 365.25), unit: "year" };
}

/** The facts that tell on which date people stood in the hall. */
export interface DatedDay {
  readonly date: string;
  readonly state: "planned" | "open" | "closed";
  /** The calendar day on which it was opened first; null before that, and for days from before this was kept. */
  readonly openedOn: string | null;
}

/**
 * Returns the calendar day on which people really stand in the hall (ISO 8601), by which ages are judged: the one on
 * which the day was opened, whatever date was typed when it was planned. Where that is unknown, today or the typed
 * date, whichever is earlier: a guardian is asked about once too often rather than once too seldom.
 */
export function heldOn({ date, state, openedOn }: DatedDay, today: string): string {
  if (openedOn !== null) return openedOn;
  return state === "closed" || date < today ? date : today;
}
