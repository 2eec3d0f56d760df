import { type UseQueryResult, useQuery } from "@tanstack/react-query";
import { createContext, type ReactNode, useContext, useEffect, useRef, useState } from "react";
import type { Post } from "../../electron/domain/lock/post.ts";
import { queryClient, useTRPC } from "./client.tsx";
import { useChanges } from "./feed.ts";
import { tell } from "./messages.ts";
import { isAt, places } from "./places.ts";

/** How the desk stands: whose it is, and whether anybody may use it. The desk decides it; a page is only told. */
export interface DeskStanding {
  readonly post: Post;
  readonly locked: boolean;
  readonly pinSet: boolean;
  readonly idleMinutes: number;
  /** How long nobody may try a PIN, in ms, when this was told. */
  readonly waitMs: number;
  readonly unreadable: boolean;
  /** Where the file for a forgotten PIN goes; null where that is not for whoever sits here. */
  readonly folder: string | null;
}

/** A page that asks nobody: paper, and the board. */
const open: DeskStanding = {
  post: { role: "organiser" },
  ...{ locked: false, pinSet: false, idleMinutes: 10, waitMs: 0, unreadable: false, folder: null },
};

const StandingContext = createContext<DeskStanding>(open);

/** Whose desk this is just now. */
export function useStanding(): DeskStanding {
  return useContext(StandingContext);
}

/** Whether a place of the desk is open to whoever it was handed over to. The door refuses the rest in any case. */
export function mayOpen(post: Post, path: string): boolean {
  if (post.role === "organiser") return true;
  const own = places.find((place) => place.path === firstPathOf(post));
  return own !== undefined && isAt(path, own);
}

/** The place where a desk begins. */
export function firstPathOf(post: Post): string {
  if (post.role === "organiser") return "/";
  return post.role === "station" ? `/station/${post.test}` : "/check-in";
}

/** Tells one post from another. */
export function nameOfPost(post: Post): string {
  return post.role === "station" ? `station ${post.test}` : post.role;
}

interface StandingProviderProps {
  readonly children: ReactNode;
  /** What stands over everything while the desk is locked. */
  readonly cover: ReactNode;
  /** What stands there when nobody can say how the desk stands. */
  readonly failed: (query: UseQueryResult<unknown, unknown>) => ReactNode;
}

/**
 * Follows the desk's lock. What is under a lock stays as it is, hidden and out of reach, and reads nothing anew; a window
 * that starts locked has nothing under it.
 */
export function StandingProvider({ children, cover, failed }: StandingProviderProps) {
  const trpc = useTRPC();
  const query = useQuery(trpc.lock.standing.queryOptions());
  const standing = query.data;
  const locked = standing?.locked === true;
  const [opened, setOpened] = useState(false);
  useChanges(locked);
  useReadAnew(standing);
  useEffect(() => {
    if (standing !== undefined && !locked) setOpened(true);
  }, [standing, locked]);
  if (standing === undefined) return query.isError ? failed(query) : null;
  return (
    <StandingContext value={standing}>
      {(opened || !locked) && (
        <div hidden={locked} inert={locked}>
          {children}
        </div>
      )}
      {locked && cover}
    </StandingContext>
  );
}

/** What was read for one must not lie about for the next, and what was missed under a lock is read. */
function useReadAnew(standing: DeskStanding | undefined): void {
  const name = standing === undefined ? null : `${nameOfPost(standing.post)} ${standing.locked}`;
  const before = useRef(name);
  useEffect(() => {
    if (before.current !== null && name !== before.current && standing?.locked === false) {
      tell(null);
      queryClient.removeQueries({ type: "inactive" });
      void queryClient.invalidateQueries();
    }
    before.current = name;
  }, [name, standing?.locked]);
}
