import { useLayoutEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import css from "./IntervalPlot.module.css";
import { drawInterval, type Estimate } from "./interval.ts";

interface IntervalPlotProps {
  readonly estimate: Estimate;
  /** The last whole step of the axis, to either side. */
  readonly reach: number;
  /** True for what stands out: its middle is filled. */
  readonly strong: boolean;
}

/** Plots an estimate with its interval around nought. Whoever reads it aloud has the numbers beside it. */
export function IntervalPlot({ estimate, reach, strong }: IntervalPlotProps) {
  const place = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    place.current?.replaceChildren(drawInterval(estimate, reach));
  }, [estimate, reach]);
  return <span ref={place} className={css.picture} data-strong={strong} />;
}

/** Says over a column of intervals which way is better. */
export function IntervalEnds() {
  const { t } = useTranslation("plots");
  return (
    <span className={css.ends}>
      <span>{t("worse")}</span>
      <span>{t("better")}</span>
    </span>
  );
}
