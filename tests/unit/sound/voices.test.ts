import { expect, test } from "vitest";
import { soundNames, voices } from "../../../renderer/sound/voices.ts";
import { gainOf } from "../../../renderer/sound/volume.ts";

test("the notes of a sound that ring together never add up to more than the card can give", () => {
  for (const name of soundNames) {
    const notes = voices[name];
    for (const { at } of notes) {
      const together = notes.filter((note) => note.at <= at && at < note.at + note.ms);
      expect(together.reduce((sum, { peak }) => sum + peak, 0)).toBeLessThanOrEqual(1);
    }
  }
});

test("beats end long before the next one at any tempo that a day may set", () => {
  for (const name of ["top", "bottom", "count-in", "start"] as const) {
    // 80 beats a minute: 750 ms.
    expect(Math.max(...voices[name].map(({ at, ms }) => at + ms))).toBeLessThan(700);
  }
});

test("every pitch lies between 1 and 4 kHz, where a hall is quiet and ears are keen", () => {
  for (const { hertz, toHertz = hertz } of soundNames.flatMap((name) => voices[name])) {
    for (const pitch of [hertz, toHertz]) expect(pitch >= 1_000 && pitch <= 4_000).toBe(true);
  }
});

test.each([
  [0, 0],
  [0.5, 0.25],
  [1, 1],
  [1.2, 1],
  [-1, 0],
])("volume %d is a factor of %d", (volume, gain) => {
  expect(gainOf(volume)).toBe(gain);
});
