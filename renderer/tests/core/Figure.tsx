import type { StageName } from "../../../electron/domain/tests/core/protocol.ts";
import css from "../Drawing.module.css";

/** The lifted limbs by stage; near is the side towards you. */
const lifted: Record<StageName, { readonly arm?: "near" | "far"; readonly leg?: "near" | "far" }> = {
  "both-feet": {},
  "one-foot": { leg: "near" },
  "other-foot": { leg: "far" },
  "one-arm": { arm: "near" },
  "other-arm": { arm: "far" },
  "arm-and-leg": { arm: "near", leg: "far" },
  "other-arm-and-leg": { arm: "far", leg: "near" },
};

const limbs = {
  arm: {
    near: { down: "M35 36v21H17", up: "M35 37 4 46" },
    far: { down: "M40 37v17H24", up: "M35 37 4 43" },
  },
  leg: {
    near: { down: "M70 43l36 9 3 6", up: "M70 43l40-12" },
    far: { down: "M70 42l32 7 3 6", up: "M70 42l40-15" },
  },
} as const;

/** Draws one stage of the plank from the side. Lifted limbs are thick and in the test's colour, with an arrow. */
export function CoreFigure({ stage }: { readonly stage: StageName }) {
  const { arm, leg } = lifted[stage];
  return (
    <svg className={css.drawing} viewBox="0 0 124 64" aria-hidden="true">
      <path className={css.floor} d="M2 61h120" />
      <Limb limb="arm" side="far" up={arm === "far"} />
      <Limb limb="leg" side="far" up={leg === "far"} />
      <circle className={css.body} cx="21" cy="25" r="7.5" />
      <path className={css.body} d="M35 36 70 43" />
      <Limb limb="arm" side="near" up={arm === "near"} />
      <Limb limb="leg" side="near" up={leg === "near"} />
      {leg !== undefined && <path className={css.head} d="M102 20l5-9 5 9z" />}
      {arm !== undefined && <path className={css.head} d="M0 34l5-9 5 9z" />}
    </svg>
  );
}

interface LimbProps {
  readonly limb: keyof typeof limbs;
  readonly side: "near" | "far";
  readonly up: boolean;
}

function Limb({ limb, side, up }: LimbProps) {
  const { [side]: places } = limbs[limb];
  const look = up ? css.lifted : side === "near" ? css.body : css.far;
  return <path className={look} data-far={side === "far"} d={up ? places.up : places.down} />;
}
