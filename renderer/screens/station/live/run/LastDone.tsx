import { useTranslation } from "react-i18next";
import { Button } from "../../../../parts/controls/Button.tsx";
import type { Live, LiveLane } from "../../../../tests/live/tool.ts";
import { useUnitWord } from "../../../../words/marks.ts";
import { useShowNumber } from "../../../../words/numbers.ts";
import { writtenHere } from "./LaneDone.tsx";
import css from "./LastDone.module.css";
import { Standing } from "./Standing.tsx";

/**
 * Says on a phone, whose lanes are out of sight then, the result of whoever was done last, and leads to the question about
 * it. Where lanes are in sight they say it themselves.
 */
export function LastDone({ live }: { readonly live: Live }) {
  const { t } = useTranslation("live");
  const show = useShowNumber();
  const unitWord = useUnitWord();
  const lane = lastDone(live);
  const written = lane === null ? null : (lane.in.told?.written ?? writtenHere(live, lane));
  if (lane === null || written === null) return null;
  const { who, told, doubts } = lane.in;
  return (
    <div className={css.last}>
      <p>
        <strong>{who.bib}</strong> {who.name}:{" "}
        <strong>{`${show(written.number)} ${unitWord(written.unit, written.number)}`}</strong>
      </p>
      {doubts.length > 0 ? (
        <Button onPress={() => showLane(lane.lane)}>{t("lane.sure")}</Button>
      ) : (
        told?.news != null && <Standing standing={told.news.standing} />
      )}
    </div>
  );
}

/** Returns the lane that was done by the newest of all taps that ended one; null while all are at it. */
function lastDone({ heat, lanes }: Live): LiveLane | null {
  const lane = heat.events.findLast((event) => lanes.some((each) => isDone(each, event.lane)))?.lane;
  return lanes.find((each) => isDone(each, lane ?? null)) ?? null;
}

function isDone({ lane, state }: LiveLane, wanted: number | null): boolean {
  return lane === wanted && state.phase === "done";
}

function showLane(lane: number): void {
  document.querySelector(`[data-lane="${lane}"]`)?.scrollIntoView({ block: "center" });
}
