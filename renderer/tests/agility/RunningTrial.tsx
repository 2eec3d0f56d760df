import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { Stack } from "../../parts/flow/Stack.tsx";
import type { HeatClock } from "../../sound/clock.ts";
import { showNumber } from "../../words/numbers.ts";
import type { LaneProps, LiveLane } from "../live/tool.ts";
import css from "./Trial.module.css";
import { TrialHead, TrialKeys } from "./TrialKeys.tsx";
import { countInLeft, secondsLeft } from "./timeline.ts";

type Trial = NonNullable<LiveLane<"agility">["state"]["trial"]>;

interface RunningTrialProps extends LaneProps<"agility"> {
  readonly trial: Trial;
}

/** Shows a running trial: the time left, what was tapped, and the keys for it. */
export function RunningTrial({ live, lane, trial }: RunningTrialProps) {
  const { t } = useTranslation("agility");
  const isCountIn = trial.stage === "count-in";
  return (
    <div className={css.trial}>
      <TrialHead live={live} lane={lane} title={t(`live.direction.${trial.direction}`)} />
      <div className={`${css.top} ${css.running}`}>
        <Stack as="p" gap={1} className={css.left} data-count-in={isCountIn}>
          <span>{t(isCountIn ? "live.running.countIn" : "live.running.left")}</span>
          <TrialClock clock={live.clock} trial={trial} />
        </Stack>
        <Stack as="p" gap={1}>
          <span>{t("live.running.landings")}</span>
          <span className={css.number}>{trial.landings}</span>
          <span>{t("live.running.touches", { count: trial.touches })}</span>
        </Stack>
      </div>
      <TrialKeys live={live} lane={lane} trial={trial} />
      <p className="quiet measure">{t("live.running.count")}</p>
    </div>
  );
}

/** Shows the seconds left, updated each frame. */
function TrialClock({
  clock,
  trial: { fromMs, untilMs },
}: {
  readonly clock: HeatClock;
  readonly trial: Trial;
}) {
  const number = useRef<HTMLSpanElement>(null);
  const { language } = useTranslation().i18n;
  useEffect(() => {
    let asked = 0;
    function draw(): void {
      const now = clock.elapsed();
      const text =
        now < fromMs ? `${countInLeft(fromMs, now)}` : showNumber(secondsLeft(untilMs, now), language);
      if (number.current !== null && number.current.textContent !== text) number.current.textContent = text;
      asked = requestAnimationFrame(draw);
    }
    draw();
    return () => cancelAnimationFrame(asked);
  }, [clock, fromMs, untilMs, language]);
  return <span ref={number} role="timer" className={`figures ${css.clock}`} />;
}
