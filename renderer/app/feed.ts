import type { QueryClient } from "@tanstack/react-query";
import { useEffect } from "react";
import { type Client, client, queryClient } from "./client.tsx";

/** Which groups of procedures to read again for a topic of the change feed; a topic not named here means all. */
const groupsOf: Readonly<Record<string, readonly string[]>> = {
  people: ["people", "checkIn", "day", "board", "station", "bundle"],
  entrants: ["checkIn", "station", "board", "day", "people", "bundle"],
  attempts: ["station", "board", "day", "people", "bundle"],
  calls: ["station", "board", "day"],
};

/** The groups to read again, or null for everything. */
export function groupsToRead(topics: Iterable<string>): ReadonlySet<string> | null {
  const groups = new Set<string>();
  for (const topic of topics) {
    const named = groupsOf[topic];
    if (named === undefined) return null;
    for (const group of named) groups.add(group);
  }
  return groups;
}

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
 * Follows the change feed until the returned function is called. Topics that arrive within one frame are read again
 * together. The server resumes after the last event seen, or says "all" where that is too long ago.
 */
export function followChanges(from: Client, queries: QueryClient): () => void {
  const waiting = new Set<string>();
  let frame = 0;
  function flush(): void {
    frame = 0;
    const topics = [...waiting];
    waiting.clear();
    readAgain(queries, topics);
  }
  const subscription = from.changes.subscribe(undefined, {
    onData({ data }) {
      for (const topic of data.topics) waiting.add(topic);
      if (frame === 0) frame = requestAnimationFrame(flush);
    },
  });
  return () => {
    cancelAnimationFrame(frame);
    subscription.unsubscribe();
  };
}

/** Keeps all that is shown true while the window is open: once a window. */
export function useChanges(): void {
  useEffect(() => followChanges(client, queryClient), []);
}
