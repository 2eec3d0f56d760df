import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { formatLength } from "../../../electron/domain/units.ts";
import { useShowNumber } from "../../words/numbers.ts";
import type { LaneProps, StageProps } from "../live/tool.ts";
import { heightsOf, keysOfJumps } from "./heights.ts";
import css from "./Jumped.module.css";

interface JumpedProps {
  /** Its number among the athlete's jumps, from 1. */
  readonly number: number;
  /** Null for a jump from before this heat, which is corrected in the list of results. */
  readonly jump: string | null | undefined;
  readonly correct: StageProps<"vertical">["correct"];
  /** The height as it is written. */
  readonly children: ReactNode;
}

/** Shows a saved height; a press on it opens its correction. */
export function Jumped({ number, jump, correct, children }: JumpedProps) {
  const { t } = useTranslation("vertical");
  if (correct === undefined || jump == null) return children;
  return (
    <button type="button" className={css.jumped} onClick={() => correct(jump)}>
      {children}
      <span className="unseen">{t("live.correct", { number })}</span>
    </button>
  );
}

/** Lists the jumps of an athlete who is done, each to be corrected. */
export function JumpsDone({ live, lane, correct }: LaneProps<"vertical">) {
  const show = useShowNumber();
  const jumps = keysOfJumps(lane);
  return (
    <span className={css.jumps}>
      {heightsOf(lane).map((height, index) =>
        height === null ? null : (
          // biome-ignore lint/suspicious/noArrayIndexKey: a jump is its place
          <Jumped key={index} number={index + 1} jump={jumps[index]} correct={correct}>
            {show(formatLength(height, live.lengths))}
          </Jumped>
        ),
      )}
    </span>
  );
}
