import { useTranslation } from "react-i18next";
import { BigKey } from "../live/BigKey.tsx";
import type { LaneProps } from "../live/tool.ts";
import { askedLane, settle } from "./control.ts";
import css from "./LastRep.module.css";

/** Asks of a stop that came with a beat whether that rep was done; the lower result stands until somebody says so. */
export function LastRep({ lane: { state } }: LaneProps<"push-up">) {
  const { t } = useTranslation("push-up");
  if (state.doubt === null) return null;
  return (
    <p className={`strong ${css.question}`} role="status">
      {t("live.last.ask", { cadence: state.doubt.with })}
    </p>
  );
}

/** Shows both answers where the stop was, the lower result first: a finger that presses twice says nothing wrong. */
export function LastRepAnswers({ live, lane }: LaneProps<"push-up">) {
  const { t } = useTranslation("push-up");
  const { doubt } = lane.state;
  if (doubt === null) return null;
  const cadence = doubt.with;
  const isNext = askedLane(live)?.lane === lane.lane;
  const answer = (done: boolean) => (timeStamp: number) => settle(live, lane, done, timeStamp);
  return (
    <>
      <BigKey kind="next" onPress={answer(false)}>
        <span className="unseen">{t("live.last.no", { cadence })}</span> {doubt.without}
      </BigKey>
      <BigKey {...(isNext && { hint: "M" })} onPress={answer(true)}>
        <span className="unseen">{t("live.last.yes", { cadence })}</span> {doubt.with}
      </BigKey>
    </>
  );
}
