import { useTranslation } from "react-i18next";
import type { Live, LiveLane } from "../live/tool.ts";
import css from "./Lane.module.css";

interface PushUpLaneProps {
  readonly live: Live<"push-up">;
  readonly lane: LiveLane<"push-up">;
}

/** How many of the last cadences a lane shows. */
const shown = 8;

/** A lane under way: the mark so far, the last cadences as dots and crosses, and how near it is to its end. */
export function PushUpLaneView({ lane: { state } }: PushUpLaneProps) {
  const { t } = useTranslation(["push-up", "common"]);
  const { cadences, reps, misses, warning, atHand } = state;
  return (
    <span className={css.lane}>
      <span className={css.line}>
        <span className={css.reps}>
          <strong className={css.number}>{reps}</strong> {t("common:unit.reps")}
        </span>
        <Signs cadences={cadences} open={atHand} />
      </span>
      <span className={css.state} data-warning={warning}>
        {warning && <Triangle />}
        {misses > 0 &&
          (warning ? t("live.warning.short", { count: misses }) : t("live.off", { count: misses }))}
      </span>
    </span>
  );
}

interface SignsProps {
  readonly cadences: string;
  /** The cadence that can still be marked. */
  readonly open: number;
}

/** The last cadences, newest last: a dot on, a cross off; a ring for the one that can still be marked. */
function Signs({ cadences, open }: SignsProps) {
  const first = Math.max(0, cadences.length - shown);
  return (
    <svg className={css.signs} viewBox={`0 0 ${shown * 16} 16`} aria-hidden="true">
      {[...cadences.slice(first)].map((sign, index) => {
        const cadence = first + index + 1;
        const x = (shown - cadences.length + cadence - 1) * 16 + 8;
        if (sign === "x")
          return <path key={cadence} className={css.cross} d={`M${x - 5} 3l10 10m0-10-10 10`} />;
        return <circle key={cadence} className={css.dot} data-open={cadence === open} cx={x} cy="8" r="4" />;
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
