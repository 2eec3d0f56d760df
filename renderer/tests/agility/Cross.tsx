import { useTranslation } from "react-i18next";
import css from "../Drawing.module.css";

type Direction = "cw" | "ccw";

interface CrossProps {
  readonly direction: Direction;
  /** Side of the cross in mm; drawn as a measure if given. */
  readonly size?: number;
  /** The landing of the lap, from 0, where somebody is: for a screen that follows. */
  readonly at?: number;
}

/** Centres of the quadrants from above, the front on top. */
const backLeft = [66, 124] as const;
const frontLeft = [66, 64] as const;
const frontRight = [126, 64] as const;
const backRight = [126, 124] as const;

/** Landings in order: both directions begin in the back left quadrant. */
const landings = {
  cw: [backLeft, frontLeft, frontRight, backRight],
  ccw: [backLeft, backRight, frontRight, frontLeft],
} as const;

/** Draws the taped cross from above: the start, and the direction. */
export function Cross({ direction, size, at }: CrossProps) {
  const { t } = useTranslation("agility");
  const way = t(`drawing.${direction}`);
  return (
    <svg
      className={css.drawing}
      viewBox="4 10 196 198"
      role="img"
      aria-label={`${t("drawing.title")}: ${way}`}
    >
      <path className={css.tape} d="M96 34v120M36 94h120" />
      {landings[direction].map(([x, y], index) => (
        <g key={`${x}-${y}`}>
          <circle className={css.spot} data-here={index === at} cx={x} cy={y} r="13" />
          <text className={css.number} x={x} y={y + 4}>
            {index + 1}
          </text>
          <Hop index={index} direction={direction} />
        </g>
      ))}
      <Start />
      {size !== undefined && <Measure size={size} />}
      <text className={`${css.note} ${css.middle}`} x="96" y="24">
        {t("drawing.front")}
      </text>
      <text className={css.middle} x="96" y="205">
        {way}
      </text>
    </svg>
  );
}

/** Draws the arrow from one landing to the next, over the tape: the first one's figure, rotated about the middle. */
function Hop({ index, direction }: { readonly index: number; readonly direction: Direction }) {
  const turn = direction === "cw" ? 90 * index : -90 * index;
  // Counter-clockwise is the same figure mirrored on the diagonal through the start.
  const mirror = direction === "cw" ? "" : " matrix(0 -1 -1 0 190 190)";
  return (
    <g transform={`rotate(${turn} 96 94)${mirror}`}>
      <path className={css.way} d="M60 108Q50 94 57 83" />
      <path className={css.head} d="M52.500 83.500 62 77l1 11z" />
    </g>
  );
}

/** Draws two feet outside the back left corner, and the first jump. */
function Start() {
  const { t } = useTranslation("agility");
  return (
    <g>
      <ellipse className={css.foot} cx="13" cy="164" rx="4.500" ry="9" />
      <ellipse className={css.foot} cx="25" cy="164" rx="4.500" ry="9" />
      <path className={css.way} d="M27 150 45 138" />
      <path className={css.head} d="M41 134 54 131l-7 11z" />
      <text className={css.middle} x="19" y="187">
        {t("drawing.start")}
      </text>
    </g>
  );
}

/** Draws the same measure each way. */
function Measure({ size }: { readonly size: number }) {
  const { t } = useTranslation("agility");
  const words = t("drawing.size", { feet: Math.round(size / 30.48) / 10, metres: size / 1000 });
  return (
    <g>
      <path className={css.measure} d="M166 34h12M166 154h12M172 34v120M36 162v12M156 162v12M36 168h120" />
      <text className={css.middle} transform="translate(190 94) rotate(90)">
        {words}
      </text>
      <text className={css.middle} x="100" y="183">
        {words}
      </text>
    </g>
  );
}
