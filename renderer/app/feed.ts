import type { QueryClient } from "@tanstack/react-query";
import { useEffect, useRef } from "react";
import { type Client, client, queryClient } from "./client.tsx";
import { groupsToRead } from "./topics.ts";

/** tRPC's query keys begin with the path: `[["day", "overview"], …]`. */
function groupOfKey(key: readonly unknown[]): unknown {
  return Array.isArray(key[0]) ? key[0][0] : undefined;
}

function readAgain(queries: QueryClient, topics: Iterable<string>): void {
  const groups = groupsToRead(topics);
  void queries.invalidateQueries(
    groups === null ? {} : { predicate: ({ queryKey }) => groups.has(String(groupOfKey(queryKey))) },
  );
}

/**
 * Follows the change feed until the returned function is called. A change is read again at once; more that arrive
 * before the next frame are then read together. The server resumes after the last event seen, or says "all" where that
 * is too long ago. While it is paused only the lock is read again: whoever goes on then reads everything.
 */
export function followChanges(
  from: Client,
  queries: QueryClient,
  isPaused: () => boolean = () => false,
): () => void {
  const waiting = new Set<string>();
  let frame = 0;
  function flush(): void {
    const topics = [...waiting];
    waiting.clear();
    if (topics.length > 0) readAgain(queries, isPaused() ? ["lock"] : topics);
  }
  const subscription = from.changes.subscribe(undefined, {
    onData({ data }) {
      for (const topic of data.topics) waiting.add(topic);
      if (frame !== 0) return;
      flush();
      frame = requestAnimationFrame(() => {
        frame = 0;
        flush();
      });
    },
  });
  return () => {
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
