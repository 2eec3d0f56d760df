import { roundSpan } from "../../parts/plan/round-span.ts";
import { useWriteTime } from "../../words/dates.ts";

/** Reads a time of day as people type it ("9:30", "9.30", "930", "9") as "09:30"; null where it is none. */
export function readClock(typed: string): string | null {
  const parts = /^(\d{1,2})(?:\s*[:.,h]?\s*(\d{2}))?\s*h?$/i.exec(typed.trim());
  if (parts === null) return null;
  const [hours, minutes] = [Number(parts[1]), Number(parts[2] ?? 0)];
  const written = [hours, minutes].map((part) => String(part).padStart(2, "0")).join(":");
  return hours < 24 && minutes < 60 ? written : null;
}

/** The clock of a day: seconds of its plan, from its beginning on, as times that people read. */
export interface DayClock {
  /** In whole minutes: "14:10". */
  readonly time: (seconds: number) => string;
  /** The same of a span, rounded outwards where it is long. */
  readonly span: (span: Seconds) => { readonly from: string; readonly until: string };
  /** The rounded span as instants, ISO 8601. */
  readonly instants: (span: Seconds) => { readonly from: string; readonly until: string };
}

interface Seconds {
  readonly from: number;
  readonly until: number;
}

/**
 * Returns the clock of a day.
 * @param begins the instant from which its seconds count (ISO 8601), or a day with a time of day: "2026-11-14T09:05"
 */
export function useClock(begins: string): DayClock {
  const writeTime = useWriteTime();
  const zero = Date.parse(begins);
  const instant = (seconds: number) => new Date(zero + seconds * 1000).toISOString();
  const instants = ({ from, until }: Seconds) =>
    roundSpan({ from: instant(from), until: instant(until) }, new Date(0));
  return {
    instants,
    time: (seconds) => writeTime(instant(Math.round(seconds / 60) * 60)),
    span: (of) => {
      const { from, until } = instants(of);
      return { from: writeTime(from), until: writeTime(until) };
    },
  };
}
