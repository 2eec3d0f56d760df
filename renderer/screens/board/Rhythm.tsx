import type { CSSProperties } from "react";
import css from "./Rhythm.module.css";
import type { Turn } from "./rotation.ts";
import { type Scene, secondsOf } from "./scenes.ts";

interface RhythmProps {
  readonly scenes: readonly Scene[];
  readonly turn: Turn;
}

/** How long this scene still stays: a line runs along a measuring tape on which each scene has its length. */
export function Rhythm({ scenes, turn }: RhythmProps) {
  if (scenes.length < 2) return <div className={css.tape} aria-hidden="true" />;
  return (
    <div className={css.tape} aria-hidden="true">
      {scenes.map(({ kind }, index) => {
        const here = index === turn.index;
        const style = { "--seconds": secondsOf[kind] } as CSSProperties;
        return (
          <div
            // Whatever starts the scene's time again starts its line again.
            key={here ? `now ${turn.count} of ${scenes.length}` : `${kind} ${index}`}
            className={css.scene}
            data-turn={here ? "now" : index < turn.index ? "done" : "later"}
            style={style}
          />
        );
      })}
    </div>
  );
}
