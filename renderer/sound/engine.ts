import { lookAt } from "./audio-clock.ts";
import { hasOutputDevice, type Live, openSound, outputOf } from "./live.ts";
import { playSound } from "./play.ts";
import type { SoundOutput } from "./schedule.ts";
import { startTicker } from "./ticker.ts";
import type { SoundName } from "./voices.ts";
import { gainOf, keepVolume, keptVolume } from "./volume.ts";

/**
 * asleep: waits for a press or a key before the system lets it sound. ready: it sounds. none: this machine has nothing to
 * sound with; the visual beat goes on from the same clock.
 */
type SoundState = "asleep" | "ready" | "none";

/** What a screen shows of the sound; a new object whenever something of it changes. */
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
  /** Wakes the sound. Where the system wants a press or a key first, it resolves only once it has had one. */
  wake(): Promise<void>;
  setVolume(volume: number): void;
  /** Plays at once. */
  play(name: SoundName): void;
  /** The bottom beat, the top beat and the start: enough to set the volume by. */
  test(): void;
  /**
   * Compares the clocks and then calls `tick`, about eight times a second, also while the window is hidden, until the
   * returned function is called.
   */
  keepTime(tick: () => void): () => void;
}

/** The volume glides within about this many seconds, so that a slider does not crackle. */
const glide = 0.02;
/** The system tells of a device that comes or goes, but not every system does: it is asked too, every so many ticks. */
const ticksBetweenDeviceLooks = 40;

/** Makes the sound of a window; nothing touches the machine's sound before `wake`. */
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
    // Sound that was opened with nothing to sound with goes on sounding nowhere when a device comes.
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
