import type { HeatClock } from "../../../../sound/clock.ts";

/** How often the heat's time is looked at where no frame comes, in ms; browsers make it a second in a page behind another. */
const withoutFramesMs = 250;

/**
 * Says a heat's time with each frame, until the returned function is called. A page behind another gets no frames, and a
 * heat goes on there: so a timer says it too.
 */
export function followTime(clock: Pick<HeatClock, "elapsed">, say: (elapsedMs: number) => void): () => void {
  const look = () => say(clock.elapsed());
  let asked = requestAnimationFrame(function next() {
    look();
    asked = requestAnimationFrame(next);
  });
  const timer = setInterval(look, withoutFramesMs);
  return () => {
    cancelAnimationFrame(asked);
    clearInterval(timer);
  };
}
