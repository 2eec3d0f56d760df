import type { ReactNode } from "react";
import type { EnduranceParameters } from "../../../electron/domain/tests/endurance/protocol.ts";
import css from "../Drawing.module.css";

export type ExerciseName = EnduranceParameters["exercises"][number]["exercise"];

/** Each exercise in its most typical position, with its direction of movement. */
const figures: Record<ExerciseName, ReactNode> = {
  "skater-strides": (
    <>
      <circle className={css.body} cx="36" cy="24" r="9" />
      <path className={css.body} d="M42 36 54 60 38 74 44 95h10" />
      <path className={css.body} d="M42 38 28 52l8 12M43 39l20 8 16-8" />
      <path className={css.far} d="M54 60 68 76l18 8 4-6" />
      <path className={css.way} d="M66 16h28" />
      <path className={css.head} d="M70 10 59 16l11 6zM90 10l11 6-11 6z" />
    </>
  ),
  "lunge-jumps": (
    <>
      <circle className={css.body} cx="46" cy="16" r="9" />
      <path className={css.body} d="M46 28v28l24 2v34h9" />
      <path className={css.body} d="M46 34l12 12 10-8" />
      <path className={css.far} d="M46 56l-2 28-26 2-4 8" />
      <path className={css.far} d="M46 34 34 46l-10-6" />
      <path className={css.way} d="M94 52V28" />
      <path className={css.head} d="M88 30l6-12 6 12z" />
    </>
  ),
  "high-knees": (
    <>
      <circle className={css.body} cx="46" cy="16" r="9" />
      <path className={css.body} d="M46 28v28l26-1-3 24h9" />
      <path className={css.body} d="M46 34 33 46l-9-8" />
      <path className={css.far} d="M46 56l-1 20-3 19h8" />
      <path className={css.far} d="M46 34l13 10 9-12" />
      <path className={css.ghost} d="M52 56h46" />
      <path className={css.way} d="M90 86V70" />
      <path className={css.head} d="M84 73l6-12 6 12z" />
    </>
  ),
  "squat-thrusts": (
    <>
      <circle className={css.body} cx="20" cy="46" r="9" />
      <path className={css.body} d="M31 55 58 64 40 74 50 95H39" />
      <path className={css.body} d="M31 55 28 95H18" />
      <path className={css.far} d="M58 64 102 87l3 8" />
      <path className={css.way} d="M66 94h22" />
      <path className={css.head} d="M69 88l-11 6 11 6zM86 88l11 6-11 6z" />
    </>
  ),
};

/** Draws one exercise of the circuit from the side, as line art. */
export function ExerciseFigure({ exercise }: { readonly exercise: ExerciseName }) {
  return (
    <svg className={css.drawing} viewBox="0 0 112 100" aria-hidden="true">
      <path className={css.floor} d="M4 98.500h104" />
      {figures[exercise]}
    </svg>
  );
}
