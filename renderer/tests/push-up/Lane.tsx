import { useTranslation } from "react-i18next";
import { Row } from "../../parts/flow/Stack.tsx";
import { useUnitWord } from "../../words/marks.ts";
import type { LaneProps } from "../live/tool.ts";
import css from "./Lane.module.css";

/** Number of last cadences that a lane shows. */
const shown = 8;

/** A lane under way: the mark so far, the last cadences as ticks and gaps, and how near it is to its end. */
export function PushUpLaneView({ lane: { state } }: LaneProps<"push-up">) {
  const { t } = useTranslation("push-up");
  const unitWord = useUnitWord();
  const { cadences, reps, misses, warning, atHand } = state;
  return (
    <span className={css.lane}>
      <Row as="span" gap={2} align="center" between className={css.line}>
        <span className={`quiet ${css.reps}`}>
          <strong className={`figures ${css.number}`}>{reps}</strong> {unitWord("reps", String(reps))}
        </span>
        <Signs cadences={cadences} open={atHand} />
      </Row>
      <Row as="span" gap={1} align="center" className={`small strong ${css.state}`} data-warning={warning}>
        {warning && <Stripes />}
        {misses > 0 &&
          (warning ? t("live.warning.short", { count: misses }) : t("live.off", { count: misses }))}
      </Row>
    </span>
  );
}

interface SignsProps {
  readonly cadences: string;
  /** The cadence that can still be marked. */
  readonly open: number;
}

/** The last cadences on a tape, newest last: a tick on, a gap off; half a tick for the one that can still be marked. */
function Signs({ cadences, open }: SignsProps) {
  const first = Math.max(0, cadences.length - shown);
  return (
    <svg className={css.signs} viewBox={`0 0 ${shown * 16} 16`} aria-hidden="true">
      {[...cadences.slice(first)].map((sign, index) => {
        const cadence = first + index + 1;
        const x = (shown - cadences.length + cadence - 1) * 16 + 8;
        if (sign === "x") return <path key={cadence} className={css.gap} d={`M${x} 1v8`} />;
        const height = cadence === open ? 5 : 12;
        return <path key={cadence} className={css.tick} d={`M${x - 8} 14h16M${x} 14v-${height}`} />;
      })}
    </svg>
  );
}

/** A caution is striped, as tape on a floor is. */
function Stripes() {
  return (
    <svg className={css.stripes} viewBox="0 0 24 22" aria-hidden="true">
      <path d="M2 20 10 2M9 20 17 2M16 20 24 2" />
    </svg>
  );
}
