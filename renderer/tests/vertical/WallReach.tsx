import { useTranslation } from "react-i18next";
import css from "../Drawing.module.css";

/** One tick per handbreadth; every fifth is longer. */
const ticks = Array.from({ length: 45 }, (_none, index) => index);

/** Draws the tape on the wall, the standing reach and the highest touch, and the leap between them. */
export function WallReach() {
  const { t } = useTranslation("vertical");
  return (
    <svg className={css.drawing} viewBox="0 0 360 262" role="img" aria-label={t("drawing.title")}>
      <path className={css.floor} d="M40 252h270" />
      <path className={css.tape} d="M176 252V18" />
      <path
        className={css.measure}
        d={ticks.map((tick) => `M176 ${252 - tick * 5}h${tick % 5 === 0 ? -12 : -8}`).join("")}
      />
      <path className={css.ghost} d="M104 82h190M190 34h104" />
      <Standing />
      <g transform="matrix(-1 0 0 1 352 -48)">
        <Standing />
      </g>
      <path className={css.way} d="M214 246v-24" />
      <path className={css.head} d="M208 226l6-12 6 12z" />
      <path className={css.angle} d="M286 82V34M280 82h12M280 34h12" />
      <text x="100" y="78" textAnchor="end">
        {t("drawing.reach")}
      </text>
      <text x="200" y="28">
        {t("drawing.touch")}
      </text>
      <text x="298" y="62">
        {t("drawing.leap")}
      </text>
    </svg>
  );
}

/** Draws somebody beside the tape, the arm next to it stretched up. */
function Standing() {
  return (
    <g>
      <circle className={css.body} cx="134" cy="126" r="13" />
      <path
        className={css.body}
        d="M166 84 147 148 140 194 146 250h8M146 150l-14 22 3 20M140 194 132 250h8"
      />
    </g>
  );
}
