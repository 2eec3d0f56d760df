import { useEffect, useRef } from "react";
import type { HeatClock } from "../../../sound/clock.ts";
import css from "./BigClock.module.css";

interface BigClockProps {
  readonly clock: HeatClock;
  /** Shown with tenths; the count-in is whole seconds either way. */
  readonly tenths?: boolean;
  readonly size?: "normal" | "huge";
}

/** A time that runs, written each frame from the heat's clock. It is no live region: a clock read out would never end. */
export function BigClock({ clock, tenths = false, size = "huge" }: BigClockProps) {
  const number = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    function draw(): void {
      const text = writeClock(clock.elapsed(), tenths);
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

/** 83 456 ms: "1:23", or "1:23.4". Before time 0 what is left, with a minus: "−3". */
export function writeClock(ms: number, tenths: boolean): string {
  if (ms < 0) return `−${Math.ceil(-ms / 1000)}`;
  const whole = Math.floor(ms / 1000);
  const [minutes, seconds] = [Math.floor(whole / 60), String(whole % 60).padStart(2, "0")];
  return `${minutes}:${seconds}${tenths ? `.${Math.floor((ms % 1000) / 100)}` : ""}`;
}
