import type { QueryClient } from "@tanstack/react-query";
import { useEffect, useRef } from "react";
import { type Client, client, queryClient } from "./client.tsx";
import { followDays } from "./now.ts";
import { isDevice } from "./table.ts";
import { type AskedQuery, type Changed, isTouched } from "./topics.ts";

/** Reads what a key says as tRPC's keys do, `[["station", "view"], { input: { test } }]`, or ours without `input`. */
function askedBy([path, said]: readonly unknown[]): AskedQuery {
  const { input, test } = (said ?? {}) as {
    readonly input?: { readonly test?: string };
    readonly test?: string;
  };
  return { path: Array.isArray(path) ? path.map(String) : [], test: input?.test ?? test };
}

/** Reads all shown queries again that the changes touch; ends when each has been read or has failed. */
function readAgain(queries: QueryClient, changed: Changed): Promise<void> {
  return queries.invalidateQueries({ predicate: ({ queryKey }) => isTouched(askedBy(queryKey), changed) });
}

/**
 * Longest wait for a reading, in ms; a longer one is begun anew at the next change, and holds up no other. A device's readings
 * take as long as the network does, and end by themselves (`patience.ts`): begun anew before that, none ever came while the
 * hall was busy.
 */
const longestReadingMs = isDevice ? 10_000 : 2_000;

/** Changes that come within so many ms after one that is read are read together: about a frame. */
const togetherMs = 16;

/**
 * Follows the change feed until the returned function is called. A change is read again at once; more that arrive
 * within a frame's time are then read together. No frame is waited for: a page behind another gets none, and what it
 * keeps of its heats it knows by these readings. A refetch under way is finished before the next begins. Restarting it
 * at every change would starve the window while many changes come. The server resumes after the last event seen, or
 * says "all" if that is too long ago. While paused, only the lock is read again; continuing reads everything.
 */
export function followChanges(
  from: Client,
  queries: QueryClient,
  isPaused: () => boolean = () => false,
  longestMs: number = longestReadingMs,
): () => void {
  const waiting = new Set<string>();
  let tests: Set<string> | null = new Set();
  let soon: ReturnType<typeof setTimeout> | undefined;
  let isReading = false;
  let isOver = false;
  async function flush(): Promise<void> {
    if (isReading || isOver || waiting.size === 0) return;
    const changed = { topics: new Set(isPaused() ? ["lock"] : waiting), tests };
    waiting.clear();
    tests = new Set();
    isReading = true;
    const tooLong = new Promise((resolve) => setTimeout(resolve, longestMs));
    await Promise.race([readAgain(queries, changed), tooLong]);
    isReading = false;
    await flush();
  }
  const subscription = from.changes.subscribe(undefined, {
    onData({ data }) {
      for (const topic of data.topics) waiting.add(topic);
      tests = data.tests === undefined || tests === null ? null : new Set([...tests, ...data.tests]);
      if (soon !== undefined) return;
      void flush();
      soon = setTimeout(() => {
        soon = undefined;
        void flush();
      }, togetherMs);
    },
  });
  return () => {
    isOver = true;
    clearTimeout(soon);
    subscription.unsubscribe();
  };
}

/** Keeps all that is shown up to date, over midnight too; use it once per window. `paused`: nothing may be read now. */
export function useChanges(paused = false): void {
  const latest = useRef(paused);
  latest.current = paused;
  useEffect(() => followChanges(client, queryClient, () => latest.current), []);
  // At midnight nothing is entered, and yet today is another day.
  useEffect(
    () =>
      followDays(() => {
        if (!latest.current) void queryClient.invalidateQueries();
      }),
    [],
  );
}
