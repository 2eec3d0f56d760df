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
  const keep = awakeSwitch(blocker);
  const follow = () => keep(needsAwake(desk));
  follow();
  const stop = desk.news.listen(follow);
  return () => {
    stop();
    keep(false);
  };
}

/** Returns a function that keeps the display awake, or lets it sleep again. */
export function awakeSwitch(blocker: Blocker): (wanted: boolean) => void {
  let held: number | null = null;
  return (wanted) => {
    if (wanted && held === null) held = blocker.start("prevent-display-sleep");
    if (wanted || held === null) return;
    blocker.stop(held);
    held = null;
  };
}
