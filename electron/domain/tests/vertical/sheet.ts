import { grainsOf, grainsPerCentimetre, type Length } from "../../length.ts";
import { lengthOf, lengthUnit, pastLength } from "../cells.ts";
import type { SeenCells, SheetTest } from "../definition.ts";
import { type VerticalAttempt, vertical } from "./protocol.ts";

/** A reach that raises no question, in mm: of a past mark only the height is known. */
const usualReach = 2000;

/** The vertical leap on sheets: one row per touch. Body mass is not on them: only the estimate of power needs it. */
export const verticalSheet: SheetTest<VerticalAttempt> = {
  columns: [
    {
      name: "standing_reach",
      unit: "cm",
      means: "Vertical leap: highest point touched standing",
      kind: "seen",
    },
    {
      name: "touch_reach",
      unit: "cm",
      means: "Highest point touched in the jump; the leap is touch_reach less standing_reach",
      kind: "seen",
    },
    { name: "unit", unit: "", means: "The unit of the two reaches", kind: "seen" },
  ],
  read(cells) {
    const unit = lengthUnit(cells);
    return {
      standingReach: lengthOf(cells, "standing_reach", unit),
      touchReach: lengthOf(cells, "touch_reach", unit),
    };
  },
  write,
  knownAs: ({ standingReach, touchReach }) => ({
    standingReach: inMillimetres(standingReach),
    touchReach: inMillimetres(touchReach),
  }),
  /** A past height need be no reading, so the attempt that is judged has it to the nearest millimetre. */
  readPast(cells) {
    const value = pastLength(cells, vertical.grain);
    const touch = usualReach + Math.round((10 * value) / grainsPerCentimetre);
    const seen = { standingReach: millimetres(usualReach), touchReach: millimetres(touch) };
    return { seen, value };
  },
};

/** Writes both reaches as they were read; in centimetres where they were not read in one unit. */
function write({ standingReach, touchReach }: VerticalAttempt): SeenCells {
  const isInches = standingReach.unit === "in" && touchReach.unit === "in";
  const number = (length: Length) =>
    length.unit === "in" && isInches ? length.quarters / 4 : grainsOf(length) / grainsPerCentimetre;
  return {
    standing_reach: number(standingReach),
    touch_reach: number(touchReach),
    unit: isInches ? "in" : "cm",
  };
}

function millimetres(whole: number): Length {
  return { unit: "mm", whole };
}

/** The whole millimetres that a reading was kept as before rules 2. */
function inMillimetres(length: Length): number {
  return Math.round((10 * grainsOf(length)) / grainsPerCentimetre);
}
