import { expect, test } from "vitest";
import { soundsAt } from "../../../renderer/screens/station/live/soundsAt.ts";

test("another's heat sounds at its device while that is there, and here once it is gone; the own one here", () => {
  expect(soundsAt({ device: "Red wall", deviceIsThere: true })).toBe("Red wall");
  expect(soundsAt({ device: "Red wall", deviceIsThere: false })).toBeNull();
  expect(soundsAt({ device: null, deviceIsThere: false })).toBeNull();
  expect(soundsAt(null)).toBeNull();
});
