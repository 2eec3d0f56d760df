import type { TestCode } from "../../domain/protocols/protocol.ts";
import { type AttemptOf, parseAttempt, protocolOf, refusalOf } from "../../domain/protocols/registry.ts";
import { sentence } from "../../domain/words.ts";
import { type Cells, count, lengthOf, lengthUnit, line, RowRefused, testOf, time, yesNo } from "./cells.ts";
import { readWho, type Who } from "./who.ts";

/** One attempt as it was written down on paper. */
export interface ResultRow {
  readonly who: Who;
  readonly test: TestCode;
  readonly variant: string;
  /** As the test's own schema says, its keys always in the same order. */
  readonly seen: unknown;
  readonly enteredBy: string;
  readonly note: string;
}

/** Who keyed a row that does not say. */
const nobodyNamed = "sheet";

/** Reads one row of results; knows nothing of who is here. @throws RowRefused */
export function readResultRow(cells: Cells): ResultRow {
  const who = readWho(cells);
  const test = testOf(cells);
  const variant = variantOf(cells, test);
  const seen = parseAttempt(test, readers[test](cells));
  if (!seen.success) throw new RowRefused(null, refusalOf(seen.error));
  const enteredBy = line(cells, "entered_by", 40) || nobodyNamed;
  return { who, test, variant, seen: seen.data, enteredBy, note: line(cells, "note", 500) };
}

/** The way of doing a test; a blank one is the first, which is the full one. @throws RowRefused */
export function variantOf(cells: Cells, test: TestCode): string {
  const { variants } = protocolOf(test);
  const text = cells("variant").toLowerCase();
  const [first = ""] = variants;
  if (text === "" || (text === "full" && first === "")) return first;
  const found = variants.find((variant) => variant === text);
  if (found !== undefined) return found;
  const isOnlyOne = variants.length === 1;
  throw new RowRefused(
    "variant",
    isOnlyOne ? sentence("sheets.row.noVariant") : sentence("sheets.row.variant"),
  );
}

const readers: { readonly [Code in TestCode]: (cells: Cells) => AttemptOf<Code> } = {
  "push-up": (cells) => ({
    how: "tally",
    reps: count(cells, "reps", null),
    offAtEnd: count(cells, "off_at_end", 0),
  }),
  agility: (cells) => ({
    direction: direction(cells),
    laps: count(cells, "laps", null),
    extra: extra(cells),
    touches: count(cells, "touches", 0),
  }),
  vertical(cells) {
    const unit = lengthUnit(cells);
    return {
      standingReach: lengthOf(cells, "standing_reach", unit),
      touchReach: lengthOf(cells, "touch_reach", unit),
    };
  },
  core: (cells) => ({ held: time(cells, "time") }),
  endurance: circuit,
};

const directions: Readonly<Record<string, "cw" | "ccw">> = {
  cw: "cw",
  clockwise: "cw",
  ccw: "ccw",
  counterclockwise: "ccw",
  anticlockwise: "ccw",
};

function direction(cells: Cells): "cw" | "ccw" {
  const key = cells("direction")
    .toLowerCase()
    .replace(/[\s-]+/g, "");
  const found = Object.hasOwn(directions, key) ? directions[key] : undefined;
  if (found === undefined) throw new RowRefused("direction", sentence("sheets.row.direction"));
  return found;
}

/** Four quadrants are a lap, so more than three left over is a slip of the pen. */
function extra(cells: Cells): number {
  const quadrants = count(cells, "extra", 0);
  if (quadrants > 3) throw new RowRefused("extra", sentence("sheets.row.extra"));
  return quadrants;
}

/** A time means finished; who did not finish has the rounds done instead (reps of the last round are not on paper). */
function circuit(cells: Cells): AttemptOf<"endurance"> {
  const said = yesNo(cells, "finished");
  if (said === false) {
    return { finished: false, roundsDone: count(cells, "rounds_done", null), repsDone: 0 };
  }
  if (said === null && cells("time") === "")
    throw new RowRefused("time", sentence("sheets.row.timeOrRounds"));
  return { finished: true, time: time(cells, "time") };
}
