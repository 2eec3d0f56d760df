import { useTranslation } from "react-i18next";
import type { Live, LiveLane } from "../tool.ts";
import css from "./PushUpLane.module.css";

interface PushUpLaneProps {
  readonly live: Live<"push-up">;
  readonly lane: LiveLane<"push-up">;
}

/** How many of the last cadences a lane shows. */
const shown = 8;

/** A lane under way: the mark so far, the last cadences as dots and crosses, and how near it is to its end. */
export function PushUpLaneView({ live, lane: { state } }: PushUpLaneProps) {
  const { t } = useTranslation(["livePushUp", "common"]);
  const { cadences, reps, misses, warning } = state;
  const left = live.parameters.missesToStop - misses;
  return (
    <span className={css.lane}>
      <span className={css.reps}>
        <strong className={css.number}>{reps}</strong> {t("common:unit.reps")}
      </span>
      <span className={css.right}>
        <Signs cadences={cadences.slice(-shown)} />
        <span className={css.state} data-warning={warning}>
          {warning && <Triangle />}
          {misses === 0
            ? ""
            : warning
              ? t("warning.short", { count: misses })
              : t("off", { count: misses, left })}
        </span>
      </span>
    </span>
  );
}

/** A dot for each that was on, a cross for each that was off; the newest last. */
export function Signs({ cadences }: { readonly cadences: string }) {
  return (
    <svg className={css.signs} viewBox={`0 0 ${shown * 16} 16`} aria-hidden="true">
      {[...cadences].map((sign, index) => {
        const x = (shown - cadences.length + index) * 16;
        const id = `${index}`;
        return sign === "x" ? (
          <path key={id} className={css.cross} d={`M${x + 3} 3l10 10M${x + 13} 3l-10 10`} />
        ) : (
          <circle key={id} className={css.dot} cx={x + 8} cy="8" r="3.5" />
        );
      })}
    </svg>
  );
}

function Triangle() {
  return (
    <svg className={css.triangle} viewBox="0 0 24 22" aria-hidden="true">
      <path d="M12 1 23 21H1z" />
    </svg>
  );
}
