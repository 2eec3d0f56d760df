import { isDevice, isJoinedProgram } from "../app/table.ts";
import { type AudioClock, createAudioClock } from "./audio-clock.ts";
import { playSound } from "./play.ts";
import type { SoundOutput } from "./schedule.ts";
import { gainOf } from "./volume.ts";

/** The opened sound output. */
export interface Live {
  readonly context: AudioContext;
  /** The volume; every sound goes through it. */
  readonly master: GainNode;
  readonly clock: AudioClock;
  /** Number of this opening, from 1: each has its own clock. */
  readonly opened: number;
}

/** More leaps than one opening ever has. */
const mostLeaps = 1_000_000;

/** Opens the sound output; `onState` is called on sleep and wake, `onError` at its end. */
export function openSound(
  volume: number,
  opened: number,
  onState: () => void,
  onError: (error: Event) => void,
): Live {
  // Beats are planned ahead, so a buffer of about a tenth of a second costs nothing; with the smaller one of "balanced"
  // a busy computer audibly stuttered.
  const context = new AudioContext({ latencyHint: "playback" });
  const master = context.createGain();
  master.gain.value = gainOf(volume);
  master.connect(context.destination);
  const clock = createAudioClock();
  context.addEventListener("statechange", () => {
    if (context.state !== "running") clock.forget();
    onState();
  });
  context.addEventListener("error", onError);
  return { context, master, clock, opened };
}

/** Returns the scheduler's view of the currently open sound; nothing plays while it sleeps. */
export function outputOf(current: () => Live | null): SoundOutput {
  function running(): Live | null {
    const live = current();
    return live?.context.state === "running" ? live : null;
  }
  return {
    toAudio: (performanceMs) => running()?.clock.toAudio(performanceMs) ?? null,
    now: () => running()?.context.currentTime ?? 0,
    leaps() {
      const live = current();
      return live === null ? 0 : live.opened * mostLeaps + live.clock.leaps();
    },
    play(name, when) {
      const live = running();
      if (live === null) return { when, cancel: () => true };
      return playSound(live.context, live.master, name, when);
    },
  };
}

/**
 * True if the computer has a sound output, as far as this window can know; its name is nobody's business and not read. Some
 * browsers list none before somebody was let choose one (Firefox; W3C Audio Output Devices API): there it is taken to be there.
 */
export async function hasOutputDevice(): Promise<boolean> {
  if (isDevice && !isJoinedProgram) return true;
  const devices = await navigator.mediaDevices.enumerateDevices();
  return devices.some(({ kind }) => kind === "audiooutput");
}
