import { playSound } from "../../../renderer/sound/play.ts";
import { type SoundName, voices } from "../../../renderer/sound/voices.ts";

/** A sound as it really renders, eight times on a grid of 1.5 s. */
export interface RenderedSound {
  readonly name: SoundName;
  /** How far each onset is from the grid, in ms: the first sample above a twentieth of the sound's peak. */
  readonly onsetErrorsMs: readonly number[];
  readonly peak: number;
  /** The part of its energy that lies between 1 and 4 kHz. */
  readonly between1And4kHz: number;
  /** The largest step between two samples where it begins and where it ends, of its peak. */
  readonly edge: number;
  /** The largest sample later than a sound's own length. */
  readonly afterwards: number;
}

const rate = 48_000;
const gridSeconds = 1.5;
const times = 8;
const firstAt = 0.5;

/** Renders a sound offline and measures it. */
export async function renderSound(name: SoundName): Promise<RenderedSound> {
  const context = new OfflineAudioContext(1, rate * (firstAt + times * gridSeconds), rate);
  const grid = Array.from({ length: times }, (_, index) => firstAt + index * gridSeconds);
  for (const when of grid) playSound(context, context.destination, name, when);
  const samples = (await context.startRendering()).getChannelData(0);
  const peak = largest(samples, 0, samples.length);
  const length = Math.max(...voices[name].map(({ at, ms }) => at + ms)) / 1000;
  return {
    ...{ name, peak },
    onsetErrorsMs: grid.map((when) => onsetError(samples, when, peak / 20)),
    between1And4kHz: energyShare(samples.subarray(frame(firstAt), frame(firstAt + length))),
    edge: Math.max(...grid.map((when) => edgeOf(samples, when, when + length))) / peak,
    afterwards: Math.max(
      ...grid.map((when) => largest(samples, frame(when + length) + 2, frame(when + gridSeconds) - 2)),
    ),
  };
}

/** The largest sample of a sound that was taken back before it began. */
export async function renderCancelled(): Promise<number> {
  const context = new OfflineAudioContext(1, rate * 2, rate);
  for (const name of Object.keys(voices) as SoundName[]) {
    const playing = playSound(context, context.destination, name, 1);
    if (!playing.cancel()) throw new Error(`${name} was not taken back.`);
  }
  const samples = (await context.startRendering()).getChannelData(0);
  return largest(samples, 0, samples.length);
}

function frame(seconds: number): number {
  return Math.round(seconds * rate);
}

function largest(samples: Float32Array, from: number, until: number): number {
  let most = 0;
  for (let place = from; place < until; place += 1) most = Math.max(most, Math.abs(samples[place] ?? 0));
  return most;
}

function onsetError(samples: Float32Array, when: number, threshold: number): number {
  const from = frame(when - 0.1);
  const onset = samples.subarray(from).findIndex((sample) => Math.abs(sample) > threshold);
  return ((from + onset) / rate - when) * 1000;
}

/** The largest step within a quarter of a millisecond around a beginning and an end. */
function edgeOf(samples: Float32Array, begin: number, end: number): number {
  const around = rate / 4_000;
  const step = (place: number) => Math.abs((samples[place] ?? 0) - (samples[place - 1] ?? 0));
  const places = Array.from({ length: 2 }, (_, index) => frame(begin) + index);
  for (let place = frame(end) - around; place <= frame(end) + around; place += 1) places.push(place);
  return Math.max(...places.map(step));
}

/** The bins of the discrete Fourier transform between 1 and 4 kHz against all of it, by Parseval's theorem. */
function energyShare(samples: Float32Array): number {
  const all = samples.reduce((sum, sample) => sum + sample * sample, 0);
  const bin = rate / samples.length;
  let inside = 0;
  for (let number = Math.ceil(1_000 / bin); number * bin <= 4_000; number += 1) {
    inside += powerAt(samples, number * bin);
  }
  return (2 * inside) / samples.length / all;
}

/** Goertzel's recurrence. */
function powerAt(samples: Float32Array, hertz: number): number {
  const turn = 2 * Math.cos((2 * Math.PI * hertz) / rate);
  let [before, last] = [0, 0];
  for (const sample of samples) [before, last] = [last, sample + turn * last - before];
  return before * before + last * last - turn * before * last;
}
