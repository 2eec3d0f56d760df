import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { clockOf } from "../../../../../electron/domain/heats/fold.ts";
import { protocolOf } from "../../../../../electron/domain/tests/registry.ts";
import { Row } from "../../../../parts/flow/Stack.tsx";
import type { Live, LiveLane } from "../../../../tests/live/tool.ts";
import { useUnitWord } from "../../../../words/marks.ts";
import { useShowNumber } from "../../../../words/numbers.ts";
import { useSay } from "../../../../words/say.ts";
import { AskedOf } from "../../Doubts.tsx";
import { asksNow } from "./asking.ts";
import css from "./LaneDone.module.css";
import { Standing } from "./Standing.tsx";

interface LaneDoneProps {
  readonly live: Live;
  readonly lane: LiveLane;
  /** The test's own content. */
  readonly children?: ReactNode;
}

/**
 * Shows a lane's result: at once by its own taps, then as the desk says it, with its standing or what is doubtful; a
 * lane keeps its height while others are at it.
 */
export function LaneDone({ live, lane, children }: LaneDoneProps) {
  const { t } = useTranslation(["live", "station"]);
  const say = useSay();
  const show = useShowNumber();
  const unitWord = useUnitWord();
  const { told, doubts, trouble } = lane.in;
  const written = told?.written ?? writtenHere(live, lane);
  return (
    <div className={css.done} data-standing={told?.news?.standing ?? "none"}>
      <Row as="p" gap={2} lines={0} align="baseline" wrap className={css.mark}>
        {written === null ? (
          t("lane.done")
        ) : (
          <>
            <strong className={`figures ${css.number}`}>{show(written.number)}</strong>
            {unitWord(written.unit) !== "" && (
              <span className={css.unit}>{unitWord(written.unit, written.number)}</span>
            )}
          </>
        )}
        {written?.note !== undefined && <span className={css.note}>{say(written.note)}</span>}
      </Row>
      <div className={css.own}>{children}</div>
      {told?.news != null && doubts.length === 0 && <Standing standing={told.news.standing} />}
      {trouble !== null && <p className={`small strong ${css.trouble}`}>{say(trouble)}</p>}
      {doubts.length > 0 && !asksNow(live) && (
        <p className={`strong ${css.doubtful}`}>{t("lane.doubtful")}</p>
      )}
      {doubts.length > 0 && asksNow(live) && (
        <AskedOf doubts={doubts}>
          {/* Where all are done together, it is said once beside the lanes. */}
          {clockOf(live.test) === "own" && <p>{t("station:doubt.waits")}</p>}
        </AskedOf>
      )}
    </div>
  );
}

/** Formats the mark by the protocol's own scoring, before the desk has answered. */
export function writtenHere(live: Live, lane: LiveLane) {
  const protocol = protocolOf(live.test);
  const attempts = [...lane.in.prior, ...lane.state.results.map(({ seen }) => seen)];
  if (attempts.length === 0) return null;
  const mark = protocol.score(live.parameters as never, attempts as never);
  return mark.state === "complete" ? protocol.write(mark.value, live.lengths) : null;
}
