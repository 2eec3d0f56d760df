import { useEffect, useRef } from "react";
import type { HeatClock } from "../../sound/clock.ts";
import { useShowNumber } from "../../words/numbers.ts";
import css from "./BigClock.module.css";
import { writeClock } from "./writeClock.ts";

/** Shows a heat's running time, new in each frame. No live region: reading a clock out would never end. */
export function BigClock({ clock }: { readonly clock: HeatClock }) {
  const number = useRef<HTMLSpanElement>(null);
  const show = useShowNumber();
  const shown = useRef(show);
  useEffect(() => {
    shown.current = show;
  });
  useEffect(() => {
    function draw(): void {
      const text = shown.current(writeClock(clock.elapsed(), false));
      if (number.current !== null && number.current.textContent !== text) number.current.textContent = text;
    }
    draw();
    let asked = requestAnimationFrame(function next() {
      draw();
      asked = requestAnimationFrame(next);
    });
    return () => cancelAnimationFrame(asked);
  }, [clock]);
  return <span ref={number} role="timer" className={`figures ${css.clock}`} />;
}
