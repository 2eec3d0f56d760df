import { lengthOf, lengthUnit, pastLength } from "../cells.ts";
import type { SheetTest } from "../definition.ts";
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
  write: ({ standingReach, touchReach }) => ({
    standing_reach: standingReach / 10,
    touch_reach: touchReach / 10,
    unit: "cm",
  }),
  readPast(cells) {
    const height = pastLength(cells, vertical.grain);
    return { seen: { standingReach: usualReach, touchReach: usualReach + height } };
  },
};
