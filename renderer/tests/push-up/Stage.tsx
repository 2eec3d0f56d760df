import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { countInMs } from "../../../electron/domain/heats/fold.ts";
import { cadenceAt, msPerBeat, msPerRep } from "../../../electron/domain/tests/push-up/live.ts";
import { Beat } from "../../parts/marks/Beat.tsx";
import { useSoundsHere } from "../../sound/soundsHere.ts";
import { soundEngine } from "../../sound/useSound.ts";
import type { Live, StageProps } from "../live/tool.ts";
import css from "./Stage.module.css";

/** Shows the beat for everybody, the current cadence, and the one that a tap would mark. */
export function PushUpStage({ live }: StageProps<"push-up">) {
  const { t } = useTranslation("push-up");
  const { parameters, elapsedMs, clock } = live;
  const beatMs = msPerBeat(parameters);
  const atHand = cadenceAt(parameters, elapsedMs);
  const warned = useWarnings(live);
  return (
    <div className={css.stage}>
      <div className={css.beat}>
        <Beat
          clock={clock}
          beatMs={beatMs}
          beatsPerRep={parameters.beatsPerRep}
          countInBeats={countInMs("push-up", parameters) / beatMs}
          words={{ down: t("live.beat.down"), up: t("live.beat.up") }}
        />
        <span className={css.top}>{t("live.beat.top")}</span>
        <span className={css.bottom}>{t("live.beat.bottom")}</span>
      </div>
      <div className={css.cadence}>
        <span className={`lead strong ${css.label}`}>{t("live.cadence")}</span>
        <span className={`figures ${css.number}`} data-cadence={atHand}>
          {elapsedMs < 0 ? "–" : Math.floor(elapsedMs / msPerRep(parameters)) + 1}
        </span>
        <span className={`small quiet ${css.hint}`}>
          {atHand < 1 ? t("live.before") : t("live.tapMarks", { cadence: atHand })}
        </span>
      </div>
      <p className="unseen" role="status">
        {warned.map((lane) => t("live.warning.lane", { lane, count: parameters.missesToStop - 1 })).join(" ")}
      </p>
    </div>
  );
}

/** Returns the lanes that the next missed rep ends; plays a sound when another one joins them. */
function useWarnings(live: Live<"push-up">): readonly number[] {
  const warned = live.lanes.filter(({ state }) => state.warning).map(({ lane }) => lane);
  const sounded = useRef<ReadonlySet<number>>(new Set());
  const names = warned.join(" ");
  const soundsHere = useSoundsHere();
  useEffect(() => {
    const now = new Set(names === "" ? [] : names.split(" ").map(Number));
    const isNew = [...now].some((lane) => !sounded.current.has(lane));
    sounded.current = now;
    if (isNew && soundsHere) soundEngine().play("two-off");
  }, [names, soundsHere]);
  return warned;
}
