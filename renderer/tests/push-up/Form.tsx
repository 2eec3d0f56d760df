import { useTranslation } from "react-i18next";
import css from "../Drawing.module.css";

/** Draws the two angles of a push-up at the bottom: elbows off the body from above, and bent, from the side. */
export function PushUpForm() {
  const { t } = useTranslation(["push-up", "instructions"]);
  return (
    <svg className={css.drawing} viewBox="0 0 430 170" role="img" aria-label={t("drawing.title")}>
      <FromAbove />
      <FromTheSide />
      <text className={`${css.note} ${css.middle}`} x="92" y="167">
        {t("instructions:drawing.from.above")}
      </text>
      <text className={`${css.note} ${css.middle}`} x="312" y="167">
        {t("instructions:drawing.from.side")}
      </text>
    </svg>
  );
}

function FromAbove() {
  const { t } = useTranslation(["push-up", "instructions"]);
  return (
    <g>
      <circle className={css.body} cx="92" cy="42" r="12" />
      <path className={css.body} d="M70 62h44l-8 44H78zM80 108l-3 42M104 108l3 42" />
      <path className={css.body} d="M70 62 44 88l18-36M114 62l26 26-18-36" />
      <path
        className={css.foot}
        d="M55 54l1-9 2-3 1 6v-9h2v9-10h2v10-9h2v9l2 6zM130 54l-1-9-2-3-1 6v-9h-2v9-10h-2v10-9h-2v9l-2 6z"
      />
      {/* Between the upper arm and the line of the body. */}
      <path className={css.ghost} d="M114 62v44" />
      <path className={css.angle} d="M114 90A28 28 0 0 0 133.800 81.800" />
      <text x="124" y="106">
        {t("drawing.body")}
      </text>
      <path className={css.measure} d="M61 34V16M122.500 34V16M61 20h61.500" />
      <text className={css.middle} x="92" y="11">
        {t("drawing.width")}
      </text>
    </g>
  );
}

function FromTheSide() {
  const { t } = useTranslation(["push-up", "instructions"]);
  return (
    <g>
      <path className={css.floor} d="M200 146h225" />
      {/* The top, where the beat judges. */}
      <circle className={css.ghost} cx="224" cy="54" r="13" />
      <path className={css.ghost} d="M264 142 244 70 400 132" />
      <circle className={css.body} cx="217" cy="86" r="13" />
      <path className={css.body} d="M235 96 392 134l4 9" />
      <path className={css.body} d="M235 96l40-3v50h-12" />
      <path className={css.angle} d="M259 95v14h15" />
      <text x="230" y="126">
        {t("drawing.elbow")}
      </text>
      <path className={css.way} d="M330 66v30" />
      <path className={css.head} d="M324 70l6-11 6 11zM324 92l6 11 6-11z" />
    </g>
  );
}
