import { sentence } from "../../words.ts";
import type { EnteredToday, FieldErrors, KeyedTest } from "../fields.ts";
import type { Reading } from "../reading.ts";
import { type AgilityAttempt, mostExtra } from "./protocol.ts";

/** Enters one trial of the quadrant jump from paper; the other direction is entered after it. */
export const keyedAgility: KeyedTest<AgilityAttempt> = {
  choice: { name: "direction", options: ["cw", "ccw"], keys: null },
  fields: () => [
    { name: "laps", digits: "whole" },
    { name: "extra", digits: "whole" },
    { name: "touches", digits: "whole" },
  ],
  start: (standing) => ({ direction: hasOnlyClockwise(standing) ? "ccw" : "cw" }),
  slot: ({ direction = "" }) => direction,
  read: (reading) => [
    {
      direction: reading.text("direction") === "ccw" ? "ccw" : "cw",
      laps: reading.count("laps"),
      extra: reading.count("extra"),
      touches: reading.count("touches"),
    },
  ],
  limits,
  retype({ direction, laps, extra, touches }, lengths) {
    return { typed: { direction, laps: `${laps}`, extra: `${extra}`, touches: `${touches}` }, lengths };
  },
};

function hasOnlyClockwise({ seen }: EnteredToday<AgilityAttempt>): boolean {
  return seen.length > 0 && seen.every(({ direction }) => direction === "cw");
}

function limits(reading: Reading): FieldErrors {
  const isOver = !reading.isEmpty("extra") && Number(reading.text("extra")) > mostExtra;
  return isOver ? { extra: sentence("test.agility.keyed.extra") } : {};
}
