import { cuesBetween } from "../../../electron/domain/heats/cues.ts";
import { anchorOfTap, createHeatClock } from "../../../renderer/sound/clock.ts";
import { createSoundEngine, type SoundView } from "../../../renderer/sound/engine.ts";
import { runHeatSound } from "../../../renderer/sound/run.ts";
import type { ScheduledCue } from "../../../renderer/sound/schedule.ts";
import type { Counted } from "./counter.ts";

/** What a run of the metronome left behind. */
export interface Minute {
  readonly scheduled: readonly ScheduledCue[];
  /** When each sound began, in seconds of the audio clock, as heard on the audio thread. */
  readonly heard: readonly number[];
  /** Output time stamps of the system: [seconds of the audio clock, ms of the page's clock]. */
  readonly stamps: readonly (readonly [number, number])[];
  /** How often the page's thread hung, and the longest time that it did, in ms. */
  readonly hangs: { readonly longest: number; readonly count: number };
  /** How many of the stamps were read while the window was hidden. */
  readonly hiddenStamps: number;
  /** What the sound says of itself, and whether the system names a device to sound with. */
  readonly state: SoundView["state"];
  readonly device: boolean;
}

/** The product opens the machine's sound itself and shows it to nobody, so the page keeps what it opens. */
let context: AudioContext | undefined;
const Original = AudioContext;
globalThis.AudioContext = class extends Original {
  constructor(options?: AudioContextOptions) {
    super(options);
    context = this;
  }
};

/** The parts of the minute, in ms from its beginning, between which the window is hidden. */
const hiddenFrom = 25_000;
const hiddenUntil = 45_000;
const countInMs = 6_000;

/** Runs the metronome as a heat does, count-in and all, while the page hangs for 200 ms of every second. */
export async function runMinute(bpm: number, seconds: number): Promise<Minute> {
  const engine = createSoundEngine();
  engine.setVolume(1);
  const heard = await listen(engine.wake);
  const stopTime = engine.keepTime(() => {});
  await wait(1_500);
  const scheduled: ScheduledCue[] = [];
  const clock = createHeatClock(anchorOfTap(performance.now(), -countInMs - 500));
  const parameters = { bpm, beatsPerRep: 2, missesToStop: 3 };
  const sound = runHeatSound({
    ...{ engine, clock },
    timeline: (from, until) => cuesBetween("push-up", parameters, from, until),
    say: () => undefined,
    onScheduled: (cue) => scheduled.push(cue),
  });
  const looked = await hangAndLook(seconds * 1000 + countInMs + 1_000);
  const { state } = engine.view();
  sound.stop();
  stopTime();
  const devices = await navigator.mediaDevices.enumerateDevices();
  return { scheduled, heard, ...looked, state, device: devices.some(({ kind }) => kind === "audiooutput") };
}

/** Taps what goes to the speakers, on the audio thread. */
async function listen(wake: () => Promise<void>): Promise<number[]> {
  const heard: number[] = [];
  const toSpeakers = new Set<AudioNode>();
  const connect = AudioNode.prototype.connect as (this: AudioNode, target: AudioNode) => AudioNode;
  AudioNode.prototype.connect = function (this: AudioNode, target: AudioNode): AudioNode {
    if (target instanceof AudioDestinationNode) toSpeakers.add(this);
    return connect.call(this, target);
  } as typeof AudioNode.prototype.connect;
  await wake();
  if (context === undefined) throw new Error("The metronome has opened no sound.");
  await context.audioWorklet.addModule("./listener.js");
  const listener = new AudioWorkletNode(context, "listener", { numberOfOutputs: 0 });
  listener.port.onmessage = ({ data }) => heard.push(data as number);
  for (const node of toSpeakers) connect.call(node, listener);
  return heard;
}

/** Hangs, reads the system's output time stamps in between, and has the window hidden for a while. */
async function hangAndLook(ms: number) {
  const stamps: (readonly [number, number])[] = [];
  const hangs = { longest: 0, count: 0 };
  let hiddenStamps = 0;
  const looking = setInterval(() => {
    const { contextTime = 0, performanceTime = 0 } = context?.getOutputTimestamp() ?? {};
    stamps.push([contextTime, performanceTime]);
    if (document.hidden) hiddenStamps += 1;
  }, 100);
  const begin = performance.now();
  const hiding = fetch("/show")
    .then(() => wait(hiddenFrom))
    .then(() => fetch("/hide"))
    .then(() => wait(hiddenUntil - hiddenFrom))
    .then(() => fetch("/show"));
  while (performance.now() < begin + ms) {
    await wait(800);
    const from = performance.now();
    while (performance.now() - from < 200);
    hangs.count += 1;
    hangs.longest = Math.max(hangs.longest, performance.now() - from);
  }
  clearInterval(looking);
  await hiding;
  return { stamps, hangs, hiddenStamps };
}

/** What comes of eight seconds in a hidden window that sounds nothing. */
export interface Quiet {
  /** How often the page's own timer came, set to every 125 ms, and how often the ticker did. */
  readonly timer: number;
  readonly ticks: number;
  readonly longestGapMs: number;
  /** The same of a thread that counts for itself: what it misses the machine did not give. */
  readonly counted: Counted;
}

/** Counts ticks in a hidden window: nothing sounds, so the system puts the page's own timers to sleep. */
export async function countTicksHidden(): Promise<Quiet> {
  await fetch("/hide");
  while (!document.hidden) await wait(50);
  const times: number[] = [];
  let timer = 0;
  const own = setInterval(() => {
    timer += 1;
  }, 125);
  const counter = new Worker("./counter.js");
  const stopTime = createSoundEngine().keepTime(() => times.push(performance.now()));
  await wait(8_000);
  stopTime();
  clearInterval(own);
  const counted = await new Promise<Counted>((resolve) => {
    counter.onmessage = ({ data }) => resolve(data as Counted);
    counter.postMessage(null);
  });
  const gaps = times.slice(1).map((time, index) => time - (times[index] ?? time));
  return { timer, ticks: times.length, longestGapMs: Math.max(...gaps), counted };
}

function wait(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
