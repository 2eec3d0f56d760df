import fc from "fast-check";
import { expect, test } from "vitest";
import { type AudioClock, createAudioClock, lookAt } from "../../../renderer/sound/audio-clock.ts";

/** A sound card whose crystal is off by `millionths`, looked at eight times a second with an error of `errorMs`. */
interface Card {
  readonly millionths: number;
  readonly errorMs: (look: number) => number;
}

/** What the card's clock shows, in seconds, at a time of the page's clock, in ms. */
function cardTime({ millionths }: Card, at: number): number {
  return ((at - 400) / 1000) * (1 + millionths / 1e6);
}

function look(clock: AudioClock, card: Card, at: number, index: number): void {
  clock.learn({ audio: cardTime(card, at), performance: at + card.errorMs(index), exact: true });
}

/** How far off, in ms of the page's clock, a sound due `ahead` ms from `at` would be heard. */
function errorOf(clock: AudioClock, card: Card, at: number, ahead: number): number {
  const audio = clock.toAudio(at + ahead) ?? Number.NaN;
  return ((audio - cardTime(card, at + ahead)) * 1000) / (1 + card.millionths / 1e6);
}

const millionths = fc.integer({ min: -100, max: 100 });
const errors = fc
  .array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: 30, maxLength: 97 })
  .map((list) => (index: number) => list[index % list.length] ?? 0);

test("the drift of any ordinary crystal stays below 1 ms over ten minutes, looking two and a half seconds ahead", () => {
  fc.assert(
    fc.property(millionths, errors, (off, errorMs) => {
      const card = { millionths: off, errorMs };
      const clock = createAudioClock();
      let worst = 0;
      for (let index = 0; index < 4_800; index += 1) {
        const at = 1_000 + index * 125;
        look(clock, card, at, index);
        if (index > 40) worst = Math.max(worst, Math.abs(errorOf(clock, card, at, 2_500)));
      }
      expect(worst).toBeLessThan(1);
      expect(clock.leaps()).toBe(0);
    }),
    { numRuns: 30 },
  );
});

test("beats planned one after the other stay even, whatever the looks' errors are", () => {
  fc.assert(
    fc.property(millionths, errors, (off, errorMs) => {
      const card = { millionths: off, errorMs };
      const clock = createAudioClock();
      let before: number | null = null;
      for (let index = 0; index < 1_200; index += 1) {
        const at = 1_000 + index * 125;
        look(clock, card, at, index);
        if (index < 12 || index % 12 !== 0) continue;
        const planned: number = clock.toAudio(at + 2_500) ?? Number.NaN;
        // 1.500 s at 40 beats a minute; 0.5 ms a second is the most that the offset moves.
        if (before !== null) expect(Math.abs((planned - before) * 1000 - 1_500)).toBeLessThan(0.76);
        before = planned;
      }
    }),
    { numRuns: 30 },
  );
});

test("single looks that are far off change nothing", () => {
  const card = { millionths: 0, errorMs: (index: number) => (index % 9 === 8 ? 300 : 0) };
  const clock = createAudioClock();
  for (let index = 0; index < 400; index += 1) look(clock, card, 1_000 + index * 125, index);
  expect(clock.leaps()).toBe(0);
  expect(Math.abs(errorOf(clock, card, 51_000, 0))).toBeLessThan(0.01);
});

test("a jump of the clocks is known within three looks, and is one leap", () => {
  const card = { millionths: 0, errorMs: (index: number) => (index >= 100 ? 80 : 0) };
  const clock = createAudioClock();
  for (let index = 0; index < 103; index += 1) look(clock, card, 1_000 + index * 125, index);
  expect(clock.leaps()).toBe(1);
  expect(clock.toPerformance(cardTime(card, 20_000))).toBeCloseTo(20_080, 6);
  for (let index = 103; index < 400; index += 1) look(clock, card, 1_000 + index * 125, index);
  expect(clock.leaps()).toBe(1);
});

test("a first offset that was wrong is set right at once, and counts as a leap so that plans are made anew", () => {
  const clock = createAudioClock();
  expect(clock.toAudio(5)).toBeNull();
  clock.learn({ audio: 0.1, performance: 130, exact: false });
  clock.learn({ audio: 0.2, performance: 240, exact: true });
  expect(clock.leaps()).toBe(1);
  expect(clock.toAudio(240)).toBeCloseTo(0.2, 9);
});

test("a clock that was forgotten knows nothing until the next look", () => {
  const clock = createAudioClock();
  clock.learn({ audio: 1, performance: 1_500, exact: true });
  clock.forget();
  expect([clock.toAudio(1_500), clock.toPerformance(1), clock.leaps()]).toEqual([null, null, 1]);
});

test("to the audio clock and back is the same moment", () => {
  const clock = createAudioClock();
  clock.learn({ audio: 12.5, performance: 99_000, exact: true });
  expect(clock.toPerformance(clock.toAudio(123_456.7) ?? 0)).toBeCloseTo(123_456.7, 6);
});

test("looks read one after the other are only ever late, so the least late counts", () => {
  const clock = createAudioClock();
  const late = [7, 0, 9, 3, 5, 8, 2, 6];
  for (const [index, ms] of late.entries()) {
    clock.learn({ audio: index / 8, performance: 400 + index * 125 + ms, exact: false });
  }
  expect(clock.toPerformance(0)).toBeCloseTo(400, 6);
});

test.each([
  [
    "told together",
    { contextTime: 2, performanceTime: 2_480 },
    { audio: 2, performance: 2_480, exact: true },
  ],
  [
    "nothing heard yet",
    { contextTime: 0, performanceTime: 0 },
    { audio: 2.02, performance: 2_500, exact: false },
  ],
  [
    "a card that stands still",
    { contextTime: 1, performanceTime: 1_400 },
    { audio: 2.02, performance: 2_500, exact: false },
  ],
  [
    "ahead of itself",
    { contextTime: 3, performanceTime: 2_480 },
    { audio: 2.02, performance: 2_500, exact: false },
  ],
  ["no answer", {}, { audio: 2.02, performance: 2_500, exact: false }],
])("a look at the context: %s", (_name, stamp, pair) => {
  const source = { currentTime: 2.05, outputLatency: 0.03, getOutputTimestamp: () => stamp };
  const seen = lookAt(source, () => 2_500);
  expect({ ...seen, audio: Math.round(seen.audio * 1e9) / 1e9 }).toEqual(pair);
});
