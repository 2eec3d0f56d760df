import { type UseQueryResult, useQuery } from "@tanstack/react-query";
import { createContext, type ReactNode, useContext, useEffect, useRef, useState } from "react";
import type { StandingPost } from "../../electron/domain/lock/post.ts";
import type { Answers } from "./answers.ts";
import { queryClient, useTRPC } from "./client.tsx";
import { useChanges } from "./feed.ts";
import { tell } from "./messages.ts";
import { isUnder } from "./places.ts";

/** The desk's state: its user, and whether it is locked. The desk decides it; a page only shows it. */
type DeskStanding = Answers["lock"]["standing"];

/** The state for pages that don't ask: paper, and the big screen. */
const open: DeskStanding = {
  post: { role: "organiser" },
  ...{ locked: false, pinSet: false, idleMinutes: 10, waitMs: 0, unreadable: false, folder: null },
};

const StandingContext = createContext<DeskStanding>(open);

/** Returns the desk's current state. */
export function useStanding(): DeskStanding {
  return useContext(StandingContext);
}

/** True if the desk's user may open a screen. The API refuses the others in any case. */
export function mayOpen(post: StandingPost, path: string): boolean {
  return post.role === "organiser" || isUnder(firstPathOf(post), path);
}

/** Returns the first screen for a user. */
export function firstPathOf(post: StandingPost): string {
  if (post.role === "organiser") return "/";
  return post.role === "check-in" ? "/check-in" : `/${post.role}/${post.test}`;
}

/** Returns a unique name for each post. */
export function nameOfPost(post: StandingPost): string {
  return "test" in post ? `${post.role} ${post.test}` : post.role;
}

interface StandingProviderProps {
  readonly children: ReactNode;
  /** Covers everything while the desk is locked. */
  readonly cover: ReactNode;
  /** Replaces everything when the desk's state can't be read. */
  readonly failed: (query: UseQueryResult<unknown, unknown>) => ReactNode;
}

/**
 * Follows the desk's lock. Everything under the lock stays as it is, hidden and out of reach, and is not read again; a
 * window that starts locked has nothing under it.
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

/** Drops one user's data for the next, and reads changes missed while locked. */
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
