import { grainsOf, grainsPerCentimetre, grainsPerReading, type Length } from "../../length.ts";
import { formatLength } from "../../units.ts";
import type { KeyedTest, Retyped } from "../fields.ts";
import type { LengthUnit } from "../protocol.ts";
import type { VerticalAttempt } from "./protocol.ts";

/** The leap's touches that can be entered together; each has its own field. */
const touchNames = ["touch1", "touch2", "touch3"] as const;

/** Enters the vertical leap from paper: the reach once, then one field per touch. */
export const keyedVertical: KeyedTest<VerticalAttempt> = {
  choice: null,
  fields: (_typed, room) => [
    { name: "standingReach", digits: "fraction", unit: "length" },
    ...touchNames.slice(0, Math.max(1, room)).map((name, index) => ({
      ...{ name, digits: "fraction" as const, unit: "length" as const },
      ...(index > 0 && { mayEnd: true as const }),
      // Alone it can be any of the athlete's jumps.
      ...(room <= 1 && { label: "touch" }),
    })),
    { name: "bodyMass", digits: "fraction", unit: "mass", aside: true },
  ],
  start({ seen }, lengths) {
    const reach = seen.at(-1)?.standingReach;
    return reach !== undefined && reach.unit === lengths ? { standingReach: textOf(reach, lengths) } : {};
  },
  read(reading, lengths) {
    const standingReach = reading.length("standingReach", lengths);
    const mass = reading.isEmpty("bodyMass") ? {} : { bodyMass: reading.mass("bodyMass", lengths) };
    const used = touchNames.filter((name) => !reading.isEmpty(name));
    // Without any touch, ask for the first.
    return (used.length === 0 ? [touchNames[0]] : used).map((name) => ({
      standingReach,
      touchReach: reading.length(name, lengths),
      ...mass,
    }));
  },
  retype,
};

/**
 * The texts of both reaches in the unit that gives them as they were read. Where no unit gives both, one of them is no
 * reading and is asked for again.
 */
function retype({ standingReach, touchReach, bodyMass }: VerticalAttempt, preferred: LengthUnit): Retyped {
  const other = preferred === "cm" ? "in" : "cm";
  const readable = (unit: LengthUnit) => [standingReach, touchReach].every((each) => each.unit === unit);
  const lengths = !readable(preferred) && readable(other) ? other : preferred;
  const mass = bodyMass === undefined ? {} : { bodyMass: massText(bodyMass, lengths) };
  const [reach, touch] = [textOf(standingReach, lengths), textOf(touchReach, lengths)];
  return { typed: { standingReach: reach, touch1: touch, ...mass }, lengths };
}

/** The text of a length; not rounded in the other unit, in which it is no reading and must not become one. */
function textOf(length: Length, unit: LengthUnit): string {
  const grains = grainsOf(length);
  if (length.unit === unit) return formatLength(grains, unit);
  return String(grains / (unit === "cm" ? grainsPerCentimetre : 4 * grainsPerReading.in));
}

/** Formats a mass: kilograms to the gram; pounds to the thousandth, which is finer than a gram. */
function massText(grams: number, lengths: LengthUnit): string {
  return lengths === "cm" ? `${grams / 1000}` : `${Math.round(grams / 0.45359237) / 1000}`;
}
