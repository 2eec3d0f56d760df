import { needsAwake } from "../../api/awake.ts";
import type { Desk } from "../../api/door/desk.ts";

/** The system's own: `powerSaveBlocker` of Electron. */
export interface Blocker {
  start(type: "prevent-display-sleep"): number;
  stop(id: number): boolean;
}

/**
 * Keeps the display awake while a day of the hall is open, and in the demo while a heat's clock runs, until the
 * returned function is called. Only the store decides, at the start and after every change, whichever window or process
 * made it.
 */
export function keepAwake(desk: Desk, blocker: Blocker): () => void {
  let held: number | null = null;
  function follow(): void {
    const wanted = needsAwake(desk);
    if (wanted && held === null) held = blocker.start("prevent-display-sleep");
    if (!wanted) release();
  }
  function release(): void {
    if (held !== null) blocker.stop(held);
    held = null;
  }
  follow();
  const stop = desk.news.listen(follow);
  return () => {
    stop();
    release();
  };
}
