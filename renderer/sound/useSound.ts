import { useEffect, useSyncExternalStore } from "react";
import { createSoundEngine, type SoundEngine, type SoundView } from "./engine.ts";

let engine: SoundEngine | undefined;

/** Returns the sound of this window: one for all screens. */
export function soundEngine(): SoundEngine {
  engine ??= createSoundEngine();
  return engine;
}

/** The sound for a screen: its state, and functions to change it. */
export interface Sound extends SoundView, Pick<SoundEngine, "wake" | "setVolume" | "play" | "test"> {}

/**
 * Returns the window's sound for a screen. Wakes it when the screen comes, and again at a press or key while it still
 * sleeps; then keeps comparing the clocks, so that the offset is known before the first beat.
 */
export function useSound(): Sound {
  const sound = soundEngine();
  const view = useSyncExternalStore(sound.subscribe, sound.view);
  useEffect(() => {
    function wakeIfAsleep(): void {
      if (sound.view().state !== "ready") void sound.wake();
    }
    wakeIfAsleep();
    const stopTime = sound.keepTime(() => {});
    // Of a finger a browser takes the going up alone for a permission (HTML, user activation).
    const presses = ["pointerdown", "pointerup", "keydown"] as const;
    for (const press of presses) window.addEventListener(press, wakeIfAsleep, true);
    return () => {
      stopTime();
      for (const press of presses) window.removeEventListener(press, wakeIfAsleep, true);
    };
  }, [sound]);
  return { ...view, wake: sound.wake, setVolume: sound.setVolume, play: sound.play, test: sound.test };
}
