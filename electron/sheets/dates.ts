/** The orders of day and month in a date whose year comes last. */
export const dateOrders = ["day", "month"] as const;
export type DateOrder = (typeof dateOrders)[number];

const form = /^(\d{1,4})([-./])(\d{1,2})\2(\d{1,4})$/;

interface Parts {
  readonly first: number;
  readonly second: number;
  readonly year: number;
  readonly dotted: boolean;
}

/** The parts of a date whose year stands last (14.03.2026, 3/14/2026, 14/03/26); null for every other text. */
function partsOf(text: string): Parts | null {
  const found = form.exec(text);
  if (found === null) return null;
  const [, first = "", sign, second, year = ""] = found;
  if (first.length > 2 || (year.length !== 2 && year.length !== 4)) return null;
  const whole = year.length === 2 ? 2000 + Number(year) : Number(year);
  return { first: Number(first), second: Number(second), year: whole, dotted: sign === "." };
}

/**
 * The order of all dates of a sheet, when one of them can only be read in one way; "open" when none decides it and it
 * matters, null when it does not matter. With dots the day is always first.
 */
export function orderOf(texts: Iterable<string>): DateOrder | "open" | null {
  let matters = false;
  for (const text of texts) {
    const parts = partsOf(text.trim());
    if (parts === null || parts.dotted) continue;
    if (parts.first > 12) return "day";
    if (parts.second > 12) return "month";
    if (parts.first !== parts.second) matters = true;
  }
  return matters ? "open" : null;
}

/** The ISO 8601 day that a date of a sheet means; null when it means none. */
export function dayOf(text: string, order: DateOrder): string | null {
  const iso = /^(\d{4})([-./])(\d{1,2})\2(\d{1,2})$/.exec(text);
  if (iso !== null) return realDay(Number(iso[1]), Number(iso[3]), Number(iso[4]));
  const parts = partsOf(text);
  if (parts === null) return null;
  const { first, second, year, dotted } = parts;
  return order === "day" || dotted ? realDay(year, second, first) : realDay(year, first, second);
}

function realDay(year: number, month: number, day: number): string | null {
  const two = (part: number) => String(part).padStart(2, "0");
  const iso = `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;
  const moment = new Date(`${iso}T00:00:00Z`);
  // A 30 February parses to a day in March, or not at all.
  return !Number.isNaN(moment.getTime()) && moment.toISOString().slice(0, 10) === iso ? iso : null;
}
