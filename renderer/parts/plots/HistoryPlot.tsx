import { type RefObject, useLayoutEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import { dateFormat, useWriteDay } from "../../words/dates.ts";
import { useMarkText } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import type { DateTick } from "./dates.ts";
import { cardWidth, type Drawn, draw } from "./draw.ts";
import css from "./HistoryPlot.module.css";
import { type HistoryPoint, inOrder, type Noise, type PlotSize } from "./points.ts";
import { Scan } from "./Scan.tsx";
import { useWidth } from "./useWidth.ts";

interface HistoryPlotProps {
  readonly test: TestCode;
  /** One athlete's marks of one fingerprint, in any order; at most one of them is today's. */
  readonly points: readonly HistoryPoint[];
  /** The band of no change after the last test (`noiseBand` of the test before today's or the newest); null: none. */
  readonly noise: Noise | null;
  /** page: fills its place and reacts to pointer and keys. card: static, 240 × 88 units, as wide as its place. */
  readonly size: PlotSize;
  /** The unit of heights at the axis. */
  readonly lengths?: LengthUnit;
}

/**
 * Plots an athlete's marks of one test over time, better always higher up: the test's symbol at each mark, today's
 * filled and larger, and the band of no change after the last test.
 */
export function HistoryPlot({ test, points, noise, size, lengths = "cm" }: HistoryPlotProps) {
  const { t } = useTranslation(["plots", "common"]);
  const testWord = useTestWords();
  const ordered = inOrder(points);
  const up = testWord(test, "up", { unit: t(`common:unit.${lengths}`) });
  const Picture = size === "card" ? CardPicture : PagePicture;
  return (
    <div className={css.frame} data-test={test} data-size={size}>
      {ordered.length === 0 ? (
        <p className="quiet">{t("none")}</p>
      ) : (
        <>
          <p className={`small quiet ${css.unit}`}>{up}</p>
          <Picture test={test} points={ordered} noise={noise} size={size} lengths={lengths} />
        </>
      )}
    </div>
  );
}

type PictureProps = Required<HistoryPlotProps>;

/** A card's picture always has the same units: none is measured, and none is drawn again. */
function CardPicture(props: PictureProps) {
  const place = useRef<HTMLDivElement>(null);
  useDrawing(place, props, cardWidth, ({ svg }) => svg.setAttribute("role", "img"));
  return <div ref={place} className={css.picture} />;
}

function PagePicture(props: PictureProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const [places, setPlaces] = useState<Drawn["places"]>([]);
  useDrawing(place, props, width, (drawn) => {
    drawn.svg.setAttribute("aria-hidden", "true");
    setPlaces((before) => (isSame(before, drawn.places) ? before : drawn.places));
  });
  return (
    <Scan test={props.test} points={props.points} places={places} width={width}>
      <div ref={place} className={css.picture} />
    </Scan>
  );
}

/** Draws into a place each time, and hands the drawing over before anybody sees it. */
function useDrawing(
  place: RefObject<HTMLDivElement | null>,
  { test, points, noise, size, lengths }: PictureProps,
  width: number,
  onDrawn: (drawn: Drawn) => void,
): void {
  const testWord = useTestWords();
  const summary = usePlotSummary(test, points);
  const writeDate = useWriteTick(size);
  const showNumber = useShowNumber();
  const letter = testWord(test, "letter");
  useLayoutEffect(() => {
    const drawn = draw({ test, points, noise, size, width, lengths, letter, writeDate, showNumber });
    drawn.svg.setAttribute("aria-label", summary);
    place.current?.replaceChildren(drawn.svg);
    onDrawn(drawn);
  });
}

function isSame(before: Drawn["places"], after: Drawn["places"]): boolean {
  return (
    before.length === after.length &&
    before.every(({ x, y }, index) => after[index]?.x === x && after[index]?.y === y)
  );
}

/** Returns the format of dates at the axis: the day on a page, the month on a card. */
function useWriteTick(size: PlotSize): (tick: DateTick) => string {
  const { i18n } = useTranslation();
  return ({ at, form }) => {
    const way = form === "day" && size === "card" ? "month" : form;
    return dateFormat(way, i18n.language).format(at);
  };
}

/** Describes a plot in one sentence for screen readers. */
function usePlotSummary(test: TestCode, points: readonly HistoryPoint[]): string {
  const { t } = useTranslation(["plots", "common"]);
  const testWord = useTestWords();
  const writeDay = useWriteDay();
  const markText = useMarkText();
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return "";
  return t("summary", {
    count: points.length,
    test: testWord(test, "ability"),
    first: markText(first.written),
    firstDate: writeDay(first.date),
    last: markText(last.written),
    lastDate: writeDay(last.date),
  });
}
