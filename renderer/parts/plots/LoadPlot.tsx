import { useLayoutEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import type { StationLoad } from "../../../electron/domain/plan/told.ts";
import { Row } from "../flow/Stack.tsx";
import { drawLoad, drawTimes, type LoadFrame } from "./draw-load.ts";
import css from "./LoadPlot.module.css";
import { useWidth } from "./useWidth.ts";

interface LoadPlotProps {
  readonly frame: LoadFrame;
  readonly load: StationLoad;
}

/** Plots how full one station is over time, and how many wait for it. Whoever reads it aloud has words beside it. */
export function LoadPlot({ frame, load }: LoadPlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  useLayoutEffect(() => {
    place.current?.replaceChildren(drawLoad({ ...frame, load, width }));
  }, [frame, load, width]);
  return <div ref={place} className={css.picture} data-test={load.test} />;
}

interface LoadTimesProps {
  readonly frame: LoadFrame;
  readonly write: (seconds: number) => string;
}

/** Shows the time axis under the stations' pictures. */
export function LoadTimes({ frame, write }: LoadTimesProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  useLayoutEffect(() => {
    place.current?.replaceChildren(drawTimes({ ...frame, width }, write));
  });
  return <div ref={place} className={css.picture} />;
}

/** Explains the looks of the stations' pictures. */
export function LoadLegend({ breaks }: { readonly breaks: boolean }) {
  const { t } = useTranslation("plots");
  const keys = ["used", "waiting", ...(breaks ? (["rest"] as const) : []), "end"] as const;
  return (
    <Row as="ul" gap={5} lines={1} wrap className={`small quiet ${css.legend}`}>
      {keys.map((key) => (
        <li key={key}>
          <span className={css.key} data-key={key} aria-hidden="true" />
          <span>{t(`load.${key}`)}</span>
        </li>
      ))}
    </Row>
  );
}
