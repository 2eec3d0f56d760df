import type { Best, Board, First } from "../../../electron/api/board/schemas.ts";

/** One scene of the rotation, and the time it is shown. */
export type Scene =
  | { readonly kind: "newest" }
  | { readonly kind: "walls"; readonly walls: Board["walls"] }
  | { readonly kind: "floor" }
  | { readonly kind: "closing" };

/** Seconds for which a scene is shown: long enough to find a name in it from the back of the hall. */
export const secondsOf: Readonly<Record<Scene["kind"], number>> = {
  newest: 14,
  walls: 12,
  floor: 11,
  closing: 30,
};

/** Returns what a device's screen shows when its table has closed the day and left: the totals, and nobody by name. */
export function atTheEnd(board: Board): Board {
  const day = board.day === null ? null : { ...board.day, state: "closed" as const };
  return { ...board, day, newest: [], firsts: [], walls: [], calls: [], heats: [] };
}

/**
 * Returns the scenes with content, walls in groups of `together`; always the news, which explains a best if empty. Once
 * the day is closed, the closing picture stands in place of news and calls.
 */
export function scenesOf(board: Board, together: number): Scene[] {
  const filled = board.walls.filter(({ rows }) => rows.length > 0);
  const groups = Math.ceil(filled.length / together);
  const walls = Array.from({ length: groups }, (_none, group): Scene => {
    // Five walls in groups of three are three and two, four are two and two.
    const size = Math.ceil(filled.length / groups);
    return { kind: "walls", walls: filled.slice(group * size, (group + 1) * size) };
  });
  if (board.day?.state === "closed") return [{ kind: "closing" }, ...walls];
  const { calls, heats, totals } = board;
  const isFloorAlive = calls.length > 0 || heats.length > 0 || totals.testsDone > 0;
  const floor: Scene[] = isFloorAlive ? [{ kind: "floor" }] : [];
  return [{ kind: "newest" }, ...walls, ...floor];
}

/**
 * Returns the news that stands largest: the newest best and the newest first result in turn, so that a league that is here for the
 * first time has its share of the screen; undefined without either.
 */
export function heroOf(
  newest: readonly Best[],
  firsts: readonly First[],
  round: number,
): Best | First | undefined {
  const [best] = newest;
  const [first] = firsts;
  return round % 2 === 0 ? (best ?? first) : (first ?? best);
}

/** Returns a name that identifies a piece of news; a further trial that changes nothing about it leaves the same. */
export function nameOf({ label, test, written }: Pick<Best, "label" | "test" | "written">): string {
  return JSON.stringify([label, test, written.number]);
}

/** Returns true if the board has not shown the newest best: reason to interrupt. */
export function hasNews(before: readonly Best[], now: readonly Best[]): boolean {
  const [newest] = now;
  if (newest === undefined) return false;
  const known = before.some((best) => best.seq >= newest.seq || nameOf(best) === nameOf(newest));
  return !known;
}
