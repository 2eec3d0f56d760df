import type { QueryClient } from "@tanstack/react-query";
import { useEffect, useRef } from "react";
import { type Client, client, queryClient } from "./client.tsx";
import { groupsToRead } from "./topics.ts";

/** tRPC's query keys begin with the path: `[["day", "overview"], …]`. */
function groupOfKey(key: readonly unknown[]): unknown {
  return Array.isArray(key[0]) ? key[0][0] : undefined;
}

/** Ends once all that is shown of these topics was read, or could not be. */
function readAgain(queries: QueryClient, topics: Iterable<string>): Promise<void> {
  const groups = groupsToRead(topics);
  return queries.invalidateQueries(
    groups === null ? {} : { predicate: ({ queryKey }) => groups.has(String(groupOfKey(queryKey))) },
  );
}

/** A reading that takes longer holds up no other. */
const longestReadingMs = 2_000;

/**
 * Follows the change feed until the returned function is called. A change is read again at once; more that arrive
 * before the next frame are then read together. What is being read is read to its end, and what changed meanwhile after
 * it: begun anew at every change, it would never end while many come, and the window would stand still. The server resumes after the last event seen, or says "all" where that
 * is too long ago. While it is paused only the lock is read again: whoever goes on then reads everything.
 */
export function followChanges(
  from: Client,
  queries: QueryClient,
  isPaused: () => boolean = () => false,
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
    const tooLong = new Promise((resolve) => setTimeout(resolve, longestReadingMs));
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

/** Keeps all that is shown true while the window is open: once a window. `paused`: it may read nothing just now. */
export function useChanges(paused = false): void {
  const latest = useRef(paused);
  latest.current = paused;
  useEffect(() => followChanges(client, queryClient, () => latest.current), []);
}
