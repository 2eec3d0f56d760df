import type { QueryClient } from "@tanstack/react-query";
import { useEffect, useRef } from "react";
import { type Client, client, queryClient } from "./client.tsx";
import { followDays } from "./now.ts";
import { isDevice } from "./table.ts";
import { groupsToRead } from "./topics.ts";

/** Returns the first part of a query's path, as in tRPC's keys: `[["day", "overview"], …]`. */
function groupOfKey(key: readonly unknown[]): unknown {
  return Array.isArray(key[0]) ? key[0][0] : undefined;
}

/** Reads all shown queries of these topics again; ends when each has been read or has failed. */
function readAgain(queries: QueryClient, topics: Iterable<string>): Promise<void> {
  const groups = groupsToRead(topics);
  return queries.invalidateQueries(
    groups === null ? {} : { predicate: ({ queryKey }) => groups.has(String(groupOfKey(queryKey))) },
  );
}

/**
 * Longest wait for a reading, in ms; a longer one is begun anew at the next change, and holds up no other. A device's readings
 * take as long as the network does, and end by themselves (`patience.ts`): begun anew before that, none ever came while the
 * hall was busy.
 */
const longestReadingMs = isDevice ? 10_000 : 2_000;

/**
 * Follows the change feed until the returned function is called. A change is read again at once; more that arrive
 * before the next frame are then read together. A refetch under way is finished before the next begins. Restarting it
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
  let frame = 0;
  let isReading = false;
  let isOver = false;
  async function flush(): Promise<void> {
    if (isReading || isOver || waiting.size === 0) return;
    const topics = [...waiting];
    waiting.clear();
    isReading = true;
    const tooLong = new Promise((resolve) => setTimeout(resolve, longestMs));
    await Promise.race([readAgain(queries, isPaused() ? ["lock"] : topics), tooLong]);
    isReading = false;
    await flush();
  }
  const subscription = from.changes.subscribe(undefined, {
    onData({ data }) {
      for (const topic of data.topics) waiting.add(topic);
      if (frame !== 0) return;
      void flush();
      frame = requestAnimationFrame(() => {
        frame = 0;
        void flush();
      });
    },
  });
  return () => {
    isOver = true;
    cancelAnimationFrame(frame);
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
