import { useTranslation } from "react-i18next";
import { reactionMs } from "../../../electron/domain/tests/agility/live.ts";
import { BigKey } from "../live/BigKey.tsx";
import type { LaneProps, LiveLane } from "../live/tool.ts";
import { falseStart, touch } from "./control.ts";
import css from "./TrialKeys.module.css";

interface TrialKeysProps extends LaneProps<"agility"> {
  readonly trial: NonNullable<LiveLane<"agility">["state"]["trial"]>;
}

/**
 * Shows the keys for landings and line touches, each with whose it is where there are several lanes. After the whistle
 * they keep their place under fingers, so that a press that comes late never meets another key.
 */
export function TrialKeys({ live, lane, trial }: TrialKeysProps) {
  const { t } = useTranslation("agility");
  const isOver = trial.stage === "to-count";
  const isTooLate = isOver && live.elapsedMs >= trial.untilMs + reactionMs;
  const { bib, name } = lane.in.who;
  const whose = live.lanes.length > 1 && <span className={css.whose}>{`${bib ?? ""} ${name}`}</span>;
  return (
    <div className={css.pair} data-over={isOver}>
      <div className={css.place} data-kept={isTooLate}>
        <BigKey
          size="huge"
          hint="Space"
          onPress={(timeStamp) => live.tap({ lane: lane.lane, kind: "landing", timeStamp })}
        >
          {t("live.running.landing")}
          {whose}
        </BigKey>
      </div>
      <div className={css.place}>
        <BigKey
          size="huge"
          {...(!isOver && { hint: "T" })}
          onPress={(timeStamp) => touch(live, lane, timeStamp)}
        >
          {t("live.running.touch")}
          {whose}
        </BigKey>
      </div>
    </div>
  );
}

interface TrialHeadProps extends LaneProps<"agility"> {
  readonly title: string;
}

/** Shows what is to be done now, and the key that voids the trial, in one place until it is saved. */
export function TrialHead({ live, lane, title }: TrialHeadProps) {
  const { t } = useTranslation("agility");
  return (
    <div className={css.head}>
      <h2 className={css.title}>{title}</h2>
      <BigKey kind="quiet" hint="F" onPress={(timeStamp) => falseStart(live, lane, timeStamp)}>
        {t("live.running.falseStart")}
      </BigKey>
    </div>
  );
}
