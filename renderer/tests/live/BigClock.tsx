import { useEffect, useRef } from "react";
import type { HeatClock } from "../../sound/clock.ts";
import { useShowNumber } from "../../words/numbers.ts";
import css from "./BigClock.module.css";
import { writeClock } from "./writeClock.ts";

interface BigClockProps {
  readonly clock: HeatClock;
  /** True for tenths; the count-in is in whole seconds either way. */
  readonly tenths?: boolean;
  readonly size?: "normal" | "huge";
}

/** Shows a heat's running time, new in each frame. No live region: reading a clock out would never end. */
export function BigClock({ clock, tenths = false, size = "huge" }: BigClockProps) {
  const number = useRef<HTMLSpanElement>(null);
  const show = useShowNumber();
  const shown = useRef(show);
  useEffect(() => {
    shown.current = show;
  });
  useEffect(() => {
    function draw(): void {
      const text = shown.current(writeClock(clock.elapsed(), tenths));
      if (number.current !== null && number.current.textContent !== text) number.current.textContent = text;
    }
    draw();
    let asked = requestAnimationFrame(function next() {
      draw();
      asked = requestAnimationFrame(next);
    });
    return () => cancelAnimationFrame(asked);
  }, [clock, tenths]);
  return <span ref={number} role="timer" className={css.clock} data-size={size} />;
}
