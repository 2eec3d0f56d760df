import { useQuery } from "@tanstack/react-query";
import type { Answers } from "./answers.ts";
import { useTRPC } from "./client.tsx";

type Outputs = Answers["day"];

type DayAtHand = NonNullable<Outputs["current"]["day"]>;
export type HeldTest = Outputs["protocols"][number];

/** What every printed page of a day needs. */
export interface DaySheets {
  readonly day: DayAtHand;
  /** The rules of each test, in the order of the day. */
  readonly tests: readonly HeldTest[];
}

/** Reads what printed pages of the day at hand need; null until it has arrived, and without a day. */
export function useDaySheets(): {
  /** The day, before its rules have arrived. */
  readonly day: DayAtHand | null;
  readonly sheets: DaySheets | null;
  /** True when there is no day to print for. */
  readonly noDay: boolean;
  readonly tests: ReturnType<typeof useTests>;
} {
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const day = current.data?.day ?? null;
  const tests = useTests(day !== null);
  const sheets = day === null || tests.data === undefined ? null : { day, tests: tests.data };
  return { day, sheets, noDay: current.data !== undefined && day === null, tests };
}

function useTests(enabled: boolean) {
  const trpc = useTRPC();
  return useQuery(trpc.day.protocols.queryOptions(undefined, { enabled }));
}
