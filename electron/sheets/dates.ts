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

/** The only order in which a date can be read; "either" when both give the same day, null when both differ. */
function onlyOrder({ first, second, dotted }: Parts): DateOrder | "either" | null {
  if (dotted || first === second) return "either";
  if (first > 12) return "day";
  return second > 12 ? "month" : null;
}

/**
 * The order of a sheet's dates that can be read in two ways, as the other dates have it; "open" when these have no order
 * or both orders, null when it does not matter. With dots the day is always first.
 */
export function orderOf(texts: Iterable<string>): DateOrder | "open" | null {
  const orders = new Set<DateOrder | "either" | null>();
  for (const text of texts) {
    const parts = partsOf(text.trim());
    if (parts !== null) orders.add(onlyOrder(parts));
  }
  const [order, other] = dateOrders.filter((each) => orders.has(each));
  if (order !== undefined && other === undefined) return order;
  return orders.has(null) ? "open" : null;
}

/**
 * The ISO 8601 day that a date of a sheet means; null when it means none. `order` is for dates that can be read in two ways:
 * any other is read in its own.
 */
export function dayOf(text: string, order: DateOrder): string | null {
  const iso = /^(\d{4})([-./])(\d{1,2})\2(\d{1,2})$/.exec(text);
  if (iso !== null) return realDay(Number(iso[1]), Number(iso[3]), Number(iso[4]));
  const parts = partsOf(text);
  if (parts === null) return null;
  const { first, second, year, dotted } = parts;
  const own = onlyOrder(parts) ?? order;
  const isDayFirst = dotted || (own === "either" ? order : own) === "day";
  return isDayFirst ? realDay(year, second, first) : realDay(year, first, second);
}

function realDay(year: number, month: number, day: number): string | null {
  const two = (part: number) => String(part).padStart(2, "0");
  const iso = `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;
  const moment = new Date(`${iso}T00:00:00Z`);
  // A 30 February parses to a day in March, or not at all.
  return !Number.isNaN(moment.getTime()) && moment.toISOString().slice(0, 10) === iso ? iso : null;
}
