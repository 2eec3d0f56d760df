import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { Row } from "../flow/Stack.tsx";
import css from "./PlotLegend.module.css";

/** Explains the symbols of every history plot; once per page is enough. */
export function PlotLegend() {
  const { t } = useTranslation("plots");
  return (
    <Legend
      entries={[
        { key: "earlier", sign: <Sign />, means: t("legend.earlier") },
        { key: "today", sign: <Sign filled />, means: t("legend.today") },
        { key: "noise", sign: <Band />, means: t("legend.noise") },
      ]}
    />
  );
}

/** A neutral shape, not a test's own: the legend is about all five. */
function Sign({ filled = false }: { readonly filled?: boolean }) {
  return (
    <svg className={css.sign} viewBox="0 0 24 24" aria-hidden="true" data-filled={filled}>
      <path d="M7 3h10l5.5 9L17 21H7L1.5 12z" />
    </svg>
  );
}

function Band() {
  return (
    <svg className={css.band} viewBox="0 0 40 24" aria-hidden="true">
      <rect x="0" y="4" width="40" height="16" />
      <path d="M0 4h40M0 20h40" />
    </svg>
  );
}

interface LegendProps {
  /** The meaning of each symbol; `sign` may be a TestMark or a small SVG. */
  readonly entries: readonly { readonly key: string; readonly sign: ReactNode; readonly means: ReactNode }[];
}

/** Explains a screen's symbols in one quiet line. */
function Legend({ entries }: LegendProps) {
  return (
    <Row as="ul" gap={5} lines={2} wrap className={`small quiet ${css.legend}`}>
      {entries.map((entry) => (
        <li key={entry.key}>
          {entry.sign}
          <span>{entry.means}</span>
        </li>
      ))}
    </Row>
  );
}
