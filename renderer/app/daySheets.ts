import { useQuery } from "@tanstack/react-query";
import { useTRPC } from "../../app/client.tsx";
import type { DaySheets } from "./sheets.ts";

/** Reads the data of the pages of the day at hand; null until it has arrived, and without a day. */
export function useDaySheets(): {
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
  return { sheets, noDay: current.data !== undefined && day === null, tests };
}

function useTests(enabled: boolean) {
  const trpc = useTRPC();
  return useQuery(trpc.day.protocols.queryOptions(undefined, { enabled }));
}
