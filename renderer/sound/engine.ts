import { lookAt } from "./audio-clock.ts";
import { hasOutputDevice, type Live, openSound, outputOf } from "./live.ts";
import { playSound } from "./play.ts";
import type { SoundOutput } from "./schedule.ts";
import type { SoundName } from "./voices.ts";
import { gainOf, keepVolume, keptVolume } from "./volume.ts";

/**
 * asleep: needs a press or a key before the system lets it play. ready: it plays. none: this computer has no sound
 * output; the visual beat continues from the same clock.
 */
type SoundState = "asleep" | "ready" | "none";

/** The sound's state for a screen; a new object after every change. */
export interface SoundView {
  readonly state: SoundState;
  /** 0 to 1. */
  readonly volume: number;
}

/** The sound of one window. */
export interface SoundEngine {
  readonly output: SoundOutput;
  view(): SoundView;
  subscribe(listener: () => void): () => void;
  /** Wakes the sound. If the system needs a press or a key first, it resolves only after one. */
  wake(): Promise<void>;
  setVolume(volume: number): void;
  /** Plays at once. */
  play(name: SoundName): void;
  /** Plays the bottom beat, the top beat and the start: enough to set the volume by. */
  test(): void;
  /**
   * Compares the clocks and then calls `tick`, about eight times a second, even while the window is hidden, until the
   * returned function is called.
   */
  keepTime(tick: () => void): () => void;
}

/** Seconds in which the volume glides, so that a slider does not crackle. */
const glide = 0.02;
/** Ticks between checks for sound devices: not every system reports when one comes or goes. */
const ticksBetweenDeviceLooks = 40;

/** Makes a window's sound; the computer's sound is not touched before `wake`. */
export function createSoundEngine(): SoundEngine {
  const listeners = new Set<() => void>();
  const ticks = new Set<() => void>();
  let view: SoundView = { state: "asleep", volume: keptVolume() };
  let live: Live | null = null;
  let opened = 0;
  let device = true;
  let stopTicker: (() => void) | undefined;
  let ticked = 0;

  function show(next: SoundView): void {
    if (next.state === view.state && next.volume === view.volume) return;
    view = next;
    for (const listener of listeners) listener();
  }
  function judge(): void {
    const running = live?.context.state === "running";
    show({ ...view, state: !device ? "none" : running ? "ready" : "asleep" });
  }
  function open(): void {
    opened += 1;
    live = openSound(view.volume, opened, judge, (error) => {
      console.error("The sound has failed and is opened anew at the next press or key:", error);
      close();
    });
  }
  function close(): void {
    if (live?.context.state !== "closed") void live?.context.close();
    live = null;
    judge();
  }
  async function wake(): Promise<void> {
    if (live === null) open();
    void lookForDevice();
    if (live?.context.state === "suspended") await live.context.resume();
    judge();
  }
  async function lookForDevice(): Promise<void> {
    const before = device;
    device = await hasOutputDevice();
    // Sound opened without a device stays silent even when one comes.
    if (device && !before && live !== null) {
      close();
      await wake();
    }
    judge();
  }
  function tick(): void {
    if (live?.context.state === "running") live.clock.learn(lookAt(live.context));
    for (const each of ticks) each();
    ticked += 1;
    if (ticked % ticksBetweenDeviceLooks === 0) void lookForDevice();
  }
  function play(name: SoundName, delay = 0): void {
    if (live !== null) playSound(live.context, live.master, name, live.context.currentTime + delay);
  }
  navigator.mediaDevices.addEventListener("devicechange", () => void lookForDevice());
  return {
    output: outputOf(() => live),
    view: () => view,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    wake,
    setVolume(volume) {
      keepVolume(volume);
      live?.master.gain.setTargetAtTime(gainOf(volume), live.context.currentTime, glide);
      show({ ...view, volume });
    },
    play: (name) => play(name),
    test() {
      play("bottom");
      play("top", 0.5);
      play("start", 1);
    },
    keepTime(each) {
      ticks.add(each);
      stopTicker ??= startTicker(tick);
      tick();
      return () => {
        ticks.delete(each);
        if (ticks.size > 0) return;
        stopTicker?.();
        stopTicker = undefined;
      };
    },
  };
}

/** Calls `tick` about eight times a second, even while the window is hidden, until the returned function is called. */
function startTicker(tick: () => void): () => void {
  const worker = new Worker(new URL("./ticker.worker.ts", import.meta.url), {
    type: "module",
    name: "ticker",
  });
  let timer: ReturnType<typeof setInterval> | undefined;
  worker.addEventListener("message", tick);
  worker.addEventListener("error", (event) => {
    console.error("The ticker's own thread failed; the page's timer stands in.", event.message);
    timer ??= setInterval(tick, standInMs);
  });
  return () => {
    worker.terminate();
    clearInterval(timer);
  };
}

const standInMs = 125;
