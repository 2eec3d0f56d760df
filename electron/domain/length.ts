import { z } from "zod/mini";

/**
 * A length as it was read off a tape: in half centimetres or in quarter inches. `mm` is for lengths of before both were
 * kept, whose millimetres no tape of either kind gives.
 */
export type Length = z.infer<typeof lengthSchema>;

/** A twentieth of a millimetre, the grain of heights: half a centimetre is 100 of it, and a quarter inch 127. */
export const grainsPerCentimetre = 200;
/** The step between two readings of a tape, in grains. 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
export const grainsPerReading = Object.freeze({ cm: 100, in: 127 });
const grainsPerMillimetre = grainsPerCentimetre / 10;

/** Longest length in any attempt, in mm. */
const longest = 5000;

const lengthSchema = z.discriminatedUnion("unit", [
  z.strictObject({ unit: z.literal("cm"), halves: upTo(longest / 5) }),
  z.strictObject({ unit: z.literal("in"), quarters: upTo(longest / 6.35) }),
  z.strictObject({ unit: z.literal("mm"), whole: upTo(longest) }),
]);

/** Parses a length, and the whole millimetres that taps and attempts held before rules 2. */
export const lengthOrMillimetres = z.union([
  lengthSchema,
  z.pipe(upTo(longest), z.transform(lengthOfMillimetres)),
]);

function upTo(most: number) {
  return z.int().check(z.minimum(0), z.maximum(Math.floor(most)));
}

/** Returns a length in grains; exact in both units. */
export function grainsOf(length: Length): number {
  switch (length.unit) {
    case "cm":
      return length.halves * grainsPerReading.cm;
    case "in":
      return length.quarters * grainsPerReading.in;
    case "mm":
      return length.whole * grainsPerMillimetre;
  }
}

/** True for a length that an attempt may have. */
export function isWithinTape(length: Length): boolean {
  return grainsOf(length) <= longest * grainsPerMillimetre;
}

/**
 * Returns the reading that rounded to these whole millimetres: half centimetres where they are any, else the quarter
 * inch. A quarter inch that rounds to half centimetres can't be told from them, and is less than a millimetre away.
 */
export function lengthOfMillimetres(mm: number): Length {
  if (mm % 5 === 0) return { unit: "cm", halves: mm / 5 };
  const quarters = Math.round((mm * 100) / 635);
  // A quarter inch is 6.35 mm: whole hundredths of a millimetre, then rounded half up, as it was.
  if (Math.floor((quarters * 635 + 50) / 100) === mm) return { unit: "in", quarters };
  return { unit: "mm", whole: mm };
}
