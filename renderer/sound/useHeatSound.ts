import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { say } from "../words/say.ts";
import type { HeatClock } from "./clock.ts";
import { type HeatSound, runHeatSound } from "./run.ts";
import type { ScheduledCue, Timeline } from "./schedule.ts";
import { hush, speak } from "./speech.ts";
import { soundEngine } from "./useSound.ts";

interface HeatSoundProps {
  /** The clock of the heat that runs, the same object for as long as it runs; null while none does: nothing sounds. */
  readonly clock: HeatClock | null;
  /** What is to be heard. Keep the function the same (useCallback) for as long as its cues are. */
  readonly timeline: Timeline;
  /** Told of every cue once it is scheduled or left out. */
  readonly onScheduled?: ((scheduled: ScheduledCue) => void) | undefined;
}

/** Sounds a heat for as long as the screen shows it; also speaks what its cues bring, where the system has a voice. */
export function useHeatSound({ clock, timeline, onScheduled }: HeatSoundProps): void {
  const { i18n } = useTranslation();
  const now = { timeline, onScheduled, language: i18n.language };
  const latest = useRef(now);
  const sounding = useRef<{ readonly heat: HeatSound; readonly timeline: Timeline } | null>(null);
  useEffect(() => {
    latest.current = now;
  });
  useEffect(() => {
    if (clock === null) return;
    const engine = soundEngine();
    const { timeline } = latest.current;
    const heat = runHeatSound({
      ...{ engine, clock, timeline },
      say: (sentence) => speak(say(sentence), latest.current.language, engine.view().volume),
      onScheduled: (scheduled) => latest.current.onScheduled?.(scheduled),
    });
    sounding.current = { heat, timeline };
    return () => {
      sounding.current = null;
      heat.stop();
      hush();
    };
  }, [clock]);
  useEffect(() => {
    const current = sounding.current;
    if (current === null || current.timeline === timeline) return;
    current.heat.follow(timeline);
    sounding.current = { heat: current.heat, timeline };
  }, [timeline]);
}
