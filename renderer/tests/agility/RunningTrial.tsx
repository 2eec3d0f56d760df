import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import type { HeatClock } from "../../sound/clock.ts";
import { showNumber } from "../../words/numbers.ts";
import { BigKey } from "../live/BigKey.tsx";
import type { LaneProps, LiveLane } from "../live/tool.ts";
import { falseStart } from "./control.ts";
import css from "./Trial.module.css";
import { countInLeft, secondsLeft } from "./timeline.ts";

type Trial = NonNullable<LiveLane<"agility">["state"]["trial"]>;

interface RunningTrialProps extends LaneProps<"agility"> {
  readonly trial: Trial;
}

/** Shows a running trial: the time left, and the two keys for landings and touches. */
export function RunningTrial({ live, lane, trial }: RunningTrialProps) {
  const { t } = useTranslation("agility");
  const { lane: number } = lane;
  const isCountIn = trial.stage === "count-in";
  return (
    <div className={css.trial}>
      <h2 className={css.way}>{t(`live.direction.${trial.direction}`)}</h2>
      <div className={css.running}>
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
      <div className={css.pair}>
        <BigKey
          size="huge"
          hint="Space"
          onPress={(timeStamp) => live.tap({ lane: number, kind: "landing", timeStamp })}
        >
          {t("live.running.landing")}
        </BigKey>
        <BigKey
          size="huge"
          hint="T"
          onPress={(timeStamp) => live.tap({ lane: number, kind: "touch", timeStamp })}
        >
          {t("live.running.touch")}
        </BigKey>
      </div>
      <p className="quiet measure">{t("live.running.count")}</p>
      <Row gap={3} align="center" wrap className={css.keys}>
        <BigKey kind="quiet" hint="F" onPress={(timeStamp) => falseStart(live, lane, timeStamp)}>
          {t("live.running.falseStart")}
        </BigKey>
      </Row>
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
