import type { Day } from "../../store/tables/days.ts";
import { isoAt } from "../door/calendar.ts";

/**
 * Returns the instant at which a day is planned to begin (ISO 8601), by the calendar day on which it was opened: its date
 * may be another.
 * @param clock the time of day, as "09:05"
 */
export function beginningOf({ date, openedOn }: Day, clock: string): string {
  return isoAt(openedOn ?? date, clock);
}
