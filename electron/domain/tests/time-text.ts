import { formatTime } from "../units.ts";

/** Formats a time as people type it, to the millisecond: 62 340 ms is "1:02.34". */
export function timeText(ms: number): string {
  const fraction = ms % 1000;
  const decimals = fraction === 0 ? "" : `.${String(fraction).padStart(3, "0").replace(/0+$/, "")}`;
  return formatTime(ms, false) + decimals;
}
