import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { say } from "../words/say.ts";
import type { HeatClock } from "./clock.ts";
import { type HeatSound, runHeatSound } from "./run.ts";
import type { ScheduledCue, Timeline } from "./schedule.ts";
import { useSoundsHere } from "./soundsHere.ts";
import { hush, speak } from "./speech.ts";
import { soundEngine } from "./useSound.ts";

interface HeatSoundProps {
  /** The running heat's clock, the same object as long as it runs; null without a heat: nothing sounds. */
  readonly clock: HeatClock | null;
  /** The sounds to play. Keep the function the same (useCallback) as long as its cues are. */
  readonly timeline: Timeline;
  /** Called for every cue once it is scheduled or skipped. */
  readonly onScheduled?: ((scheduled: ScheduledCue) => void) | undefined;
}

/** Plays a heat's sounds while the screen shows it, unless they sound elsewhere; also speaks its cues' sentences, if the system has a voice. */
export function useHeatSound({ clock, timeline, onScheduled }: HeatSoundProps): void {
  const { i18n } = useTranslation();
  const now = { timeline, onScheduled, language: i18n.language };
  const latest = useRef(now);
  const soundsHere = useSoundsHere();
  const sounding = useRef<{ readonly heat: HeatSound; readonly timeline: Timeline } | null>(null);
  useEffect(() => {
    latest.current = now;
  });
  useEffect(() => {
    if (clock === null || !soundsHere) return;
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
  }, [clock, soundsHere]);
  useEffect(() => {
    const current = sounding.current;
    if (current === null || current.timeline === timeline) return;
    current.heat.follow(timeline);
    sounding.current = { heat: current.heat, timeline };
  }, [timeline]);
}
