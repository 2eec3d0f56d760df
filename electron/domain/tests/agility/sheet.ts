import { sentence } from "../../words.ts";
import { type Cells, count, pastGrains, RowRefused, refuseOtherUnit } from "../cells.ts";
import type { SheetTest } from "../definition.ts";
import { type AgilityAttempt, agility, type Direction, lapsOf, mostExtra } from "./protocol.ts";

/** The quadrant jump on sheets: one row per direction. */
export const agilitySheet: SheetTest<AgilityAttempt> = {
  columns: [
    {
      name: "direction",
      unit: "cw or ccw",
      means: "Quadrant jump: clockwise or counter-clockwise",
      kind: "way",
    },
    { name: "laps", unit: "laps", means: "Quadrant jump: full laps of four landings", kind: "seen" },
    {
      name: "extra_quadrants",
      formerly: "extra",
      unit: "quadrants",
      means: "Landings of the lap that was not finished",
      kind: "seen",
    },
    {
      name: "line_touches",
      formerly: "touches",
      unit: "touches",
      means: "Touches of a line",
      kind: "seen",
    },
  ],
  read: (cells) => ({
    direction: direction(cells),
    laps: count(cells, "laps", null),
    extra: extra(cells),
    touches: count(cells, "line_touches", 0),
  }),
  write: ({ direction, laps, extra, touches }) => ({
    direction,
    laps,
    extra_quadrants: extra,
    line_touches: touches,
  }),
  readPast(cells) {
    refuseOtherUnit(cells, ["landings", "landing"]);
    const value = pastGrains(cells, agility.grain);
    const landings = Math.floor(value / agility.grain.perUnit);
    return { value, seen: { direction: "cw", ...lapsOf(landings), touches: 0 } };
  },
};

const directions: Readonly<Record<string, Direction>> = {
  cw: "cw",
  clockwise: "cw",
  ccw: "ccw",
  counterclockwise: "ccw",
  anticlockwise: "ccw",
};

function direction(cells: Cells): Direction {
  const key = cells("direction")
    .toLowerCase()
    .replace(/[\s-]+/g, "");
  const found = Object.hasOwn(directions, key) ? directions[key] : undefined;
  if (found === undefined) throw new RowRefused("direction", sentence("test.agility.row.direction"));
  return found;
}

/** Four quadrants are a lap, so more than three left over is a slip of the pen. */
function extra(cells: Cells): number {
  const quadrants = count(cells, "extra_quadrants", 0);
  if (quadrants > mostExtra) throw new RowRefused("extra_quadrants", sentence("test.agility.row.extra"));
  return quadrants;
}
