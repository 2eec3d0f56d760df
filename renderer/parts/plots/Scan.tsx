import { type KeyboardEvent, type PointerEvent, type ReactNode, useState } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import { useWriteDay } from "../../words/dates.ts";
import { useMarkText } from "../../words/marks.ts";
import { useSay } from "../../words/say.ts";
import { type Drawn, measures } from "./draw.ts";
import css from "./HistoryPlot.module.css";
import type { HistoryPoint } from "./points.ts";

interface ScanProps {
  readonly test: TestCode;
  /** Oldest first, at least one. */
  readonly points: readonly HistoryPoint[];
  readonly places: Drawn["places"];
  /** Width of the picture, in px. */
  readonly width: number;
  readonly children: ReactNode;
}

/**
 * Reads a picture mark by mark: the nearest to the pointer, or by the arrow keys. For screen readers it is a slider
 * over the marks, so that the arrow keys reach it.
 */
export function Scan({ test, points, places, width, children }: ScanProps) {
  const { t } = useTranslation(["plots", "common"]);
  const testWord = useTestWords();
  const read = useReading();
  const [chosen, setChosen] = useState<number | null>(null);
  const last = points.length - 1;
  const at = chosen === null ? null : Math.min(chosen, last);
  const point = points[at ?? last];

  function onKeyDown(event: KeyboardEvent): void {
    const to = keyTo(event.key, at ?? last, last);
    if (to === null) return;
    event.preventDefault();
    setChosen(to);
  }

  return (
    <>
      <div
        className={css.scan}
        role="slider"
        tabIndex={0}
        aria-label={t("label", { test: testWord(test, "ability") })}
        aria-valuemin={1}
        aria-valuemax={points.length}
        aria-valuenow={(at ?? last) + 1}
        aria-valuetext={point === undefined ? "" : read(point)}
        onKeyDown={onKeyDown}
        onFocus={() => setChosen((before) => before ?? last)}
        onBlur={() => setChosen(null)}
        onPointerMove={(event) => setChosen(nearest(event, places))}
        onPointerLeave={() => setChosen(null)}
      >
        <div className={css.picture}>
          {children}
          {at !== null && <Ring at={places[at]} width={width} />}
        </div>
      </div>
      <p className={css.reading}>
        {at === null || point === undefined ? <span className="small quiet">{t("hint")}</span> : read(point)}
      </p>
    </>
  );
}

/** Describes a mark in words, with its day. */
function useReading(): (point: HistoryPoint) => string {
  const { t } = useTranslation("plots");
  const say = useSay();
  const writeDay = useWriteDay();
  const markText = useMarkText();
  return ({ date, written, today }) => {
    const note = written.note === undefined ? "" : `, ${say(written.note)}`;
    const values = { date: writeDay(date), mark: `${markText(written)}${note}` };
    return today === true ? t("atToday", values) : t("at", values);
  };
}

function keyTo(key: string, at: number, last: number): number | null {
  switch (key) {
    case "ArrowLeft":
    case "ArrowDown":
      return Math.max(0, at - 1);
    case "ArrowRight":
    case "ArrowUp":
      return Math.min(last, at + 1);
    case "Home":
      return 0;
    case "End":
      return last;
    default:
      return null;
  }
}

function nearest(event: PointerEvent<HTMLElement>, places: Drawn["places"]): number | null {
  const { left, top } = event.currentTarget.getBoundingClientRect();
  const [x, y] = [event.clientX - left, event.clientY - top];
  const distances = places.map((place) => Math.hypot(place.x - x, place.y - y));
  const least = Math.min(...distances);
  return places.length === 0 ? null : distances.indexOf(least);
}

function Ring({ at, width }: { readonly at: Drawn["places"][number] | undefined; readonly width: number }) {
  if (at === undefined) return null;
  const { height, bottom } = measures.page;
  return (
    <svg className={css.ring} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <line x1={at.x} x2={at.x} y1={at.y + at.ring} y2={height - bottom} />
      <circle cx={at.x} cy={at.y} r={at.ring} />
    </svg>
  );
}
