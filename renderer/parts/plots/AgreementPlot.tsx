import { useLayoutEffect, useRef } from "react";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useShowNumber } from "../../words/numbers.ts";
import css from "./AgreementPlot.module.css";
import { type AgreementLines, type AgreementPoint, drawAgreement } from "./draw-agreement.ts";
import { useWidth } from "./useWidth.ts";

interface AgreementPlotProps {
  readonly test: TestCode;
  readonly points: readonly AgreementPoint[];
  readonly lines: AgreementLines;
  readonly lengths: LengthUnit;
  /** The same in a sentence, for screen readers. */
  readonly summary: string;
  /** What stands at the axes. */
  readonly across: string;
  readonly up: string;
}

/** Plots how two series of readings agree: each athlete's difference over the mean, with the limits of agreement. */
export function AgreementPlot({ test, points, lines, lengths, summary, across, up }: AgreementPlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const showNumber = useShowNumber();
  useLayoutEffect(() => {
    const svg = drawAgreement({ test, points, lines, width, lengths, showNumber });
    svg.setAttribute("role", "img");
    svg.setAttribute("aria-label", summary);
    place.current?.replaceChildren(svg);
  });
  return (
    <div className={css.frame} data-test={test}>
      <p className={css.axis}>{up}</p>
      <div ref={place} className={css.picture} />
      <p className={`${css.axis} ${css.across}`}>{across}</p>
    </div>
  );
}
