import { type CSSProperties, useEffect, useState } from "react";
import css from "./Rhythm.module.css";
import type { Turn } from "./rotation.ts";
import { type Scene, secondsOf } from "./scenes.ts";

/** Draws the time left of a scene: a marker moves along a measuring tape on which each scene has its length. */
export function Rhythm({ scenes, turn }: { readonly scenes: readonly Scene[]; readonly turn: Turn }) {
  const lengths = scenes.map(({ kind }) => secondsOf[kind]);
  const whole = sum(lengths);
  const from = sum(lengths.slice(0, turn.index));
  const style = { "--whole": whole } as CSSProperties;
  return (
    <div className={css.tape} data-part="foot" aria-hidden="true" style={style}>
      {scenes.length > 1 && (
        // A restart of the scene's time restarts the marker.
        <Marker
          key={`${turn.count} of ${scenes.length}`}
          {...{ from, whole, stays: lengths[turn.index] ?? whole }}
        />
      )}
    </div>
  );
}

interface MarkerProps {
  /** In seconds: where the scene begins on the tape, how long it stays, and how long the tape is. */
  readonly from: number;
  readonly stays: number;
  readonly whole: number;
}

/**
 * Goes from tick to tick, one a second. An animation would have the screen drawn sixty times a second, all day long; without
 * a graphics processor that took a tenth of a core for each screen.
 */
function Marker({ from, stays, whole }: MarkerProps) {
  const [passed, setPassed] = useState(0);
  useEffect(() => {
    if (passed >= stays) return;
    const timer = setTimeout(() => setPassed(passed + 1), 1_000);
    return () => clearTimeout(timer);
  }, [passed, stays]);
  const style = { "--from": from / whole, "--at": (from + passed) / whole } as CSSProperties;
  return <div className={css.marker} style={style} />;
}

function sum(lengths: readonly number[]): number {
  return lengths.reduce((all, length) => all + length, 0);
}
