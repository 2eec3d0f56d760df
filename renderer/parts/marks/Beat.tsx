import { type RefObject, useEffect, useRef } from "react";
import { type BeatMoment, beatAt } from "../../sound/beat.ts";
import type { HeatClock } from "../../sound/clock.ts";
import css from "./Beat.module.css";

interface BeatProps {
  /** The heat's clock; null while no heat runs, and the beat rests. */
  readonly clock: HeatClock | null;
  readonly beatMs: number;
  readonly beatsPerRep: number;
  readonly countInBeats: number;
  /** The instructions on the way: "Down", "Up". Short, since they are as large as they fit. */
  readonly words: { readonly down: string; readonly up: string };
}

/** Ms that a line stays lit after its beat. */
const litMs = 420;

/**
 * The beat, visible across a loud hall: a bar of floor tape moves down and up between two lines and meets one on each
 * beat. Every frame reads the heat's clock, so it can be late by a frame but never drift. Screen readers skip it: the
 * sounds and the count speak instead. With reduced motion nothing moves; the half to go to is filled instead.
 */
export function Beat({ clock, beatMs, beatsPerRep, countInBeats, words }: BeatProps) {
  const box = useRef<HTMLDivElement>(null);
  const count = useRef<HTMLSpanElement>(null);
  useFrames(clock, (elapsedMs) => {
    draw(box, count, beatAt(elapsedMs, beatMs, beatsPerRep, countInBeats));
  });
  return (
    <div ref={box} className={css.beat} data-way="rest" aria-hidden="true">
      <div className={css.top} />
      <div className={css.bottom} />
      <div className={css.bar} />
      <span className={css.down}>{words.down}</span>
      <span className={css.up}>{words.up}</span>
      <span ref={count} className={css.count} />
    </div>
  );
}

/** Calls `frame` with the heat's time at every animation frame. */
function useFrames(clock: HeatClock | null, frame: (elapsedMs: number) => void): void {
  const latest = useRef(frame);
  useEffect(() => {
    latest.current = frame;
  });
  useEffect(() => {
    if (clock === null) {
      latest.current(Number.NEGATIVE_INFINITY);
      return;
    }
    let asked = requestAnimationFrame(function next() {
      latest.current(clock.elapsed());
      asked = requestAnimationFrame(next);
    });
    return () => cancelAnimationFrame(asked);
  }, [clock]);
}

/** Writes a moment straight to the elements: sixty times a second is too often for React. */
function draw(
  box: RefObject<HTMLDivElement | null>,
  count: RefObject<HTMLSpanElement | null>,
  { way, place, sinceBeat, count: left }: BeatMoment,
): void {
  if (box.current === null || count.current === null) return;
  const lit = way === "rest" ? 0 : Math.max(0, 1 - sinceBeat / litMs);
  box.current.style.setProperty("--place", place.toFixed(4));
  box.current.style.setProperty("--lit", lit.toFixed(3));
  if (box.current.dataset.way !== way) box.current.dataset.way = way;
  const number = left === 0 ? "" : String(left);
  if (count.current.textContent !== number) count.current.textContent = number;
}
