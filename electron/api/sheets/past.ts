import { fingerprint } from "../../domain/protocols/fingerprint.ts";
import type { Mark, Plausibility, TestCode } from "../../domain/protocols/protocol.ts";
import { type AttemptOf, defaultParameters, protocolOf } from "../../domain/protocols/registry.ts";
import { fromUnit } from "../../domain/units.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import { type Cells, count, lengthOf, lengthUnit, RowRefused, testOf, time } from "./cells.ts";
import { variantOf } from "./results.ts";
import { readWho, type Who } from "./who.ts";

/** One mark from before this program. */
export interface PastRow {
  readonly who: Who;
  /** ISO 8601 day. */
  readonly date: string;
  readonly test: TestCode;
  readonly variant: string;
  /** In the test's grains. */
  readonly value: number;
  /** Past results are taken to be by the handbook: the default parameters. */
  readonly fingerprint: string;
  readonly unusual: Sentence | null;
}

/** Reads one row of past results; `today` is an ISO 8601 day. @throws RowRefused */
export function readPastRow(cells: Cells, today: string): PastRow {
  const who = readWho(cells);
  const date = pastDate(cells("date"), today);
  const test = testOf(cells);
  const variant = variantOf(cells, test);
  const protocol = protocolOf(test);
  const parameters = defaultParameters(test);
  const mark = markReaders[test](cells);
  const value = mark.value ?? completeValue(protocol.score(parameters, [mark.seen]));
  const opinion: Plausibility = protocol.plausibility(parameters, mark.seen);
  if (opinion.level === "refuse") throw new RowRefused("mark", opinion.sentence);
  const unusual = opinion.level === "ask" ? opinion.sentence : null;
  return { who, date, test, variant, value, fingerprint: fingerprint(test, variant, parameters), unusual };
}

/** Every mark that a sheet can hold is complete. */
function completeValue(mark: Mark): number {
  if (mark.state === "complete") return mark.value;
  throw new RowRefused("mark", sentence("sheets.row.empty"));
}

function pastDate(text: string, today: string): string {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  const day = parts === null ? undefined : new Date(`${text}T00:00:00Z`);
  // A 30 February parses to a day in March, or not at all.
  if (day === undefined || Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== text) {
    throw new RowRefused("date", sentence("sheets.row.date"));
  }
  if (text > today) throw new RowRefused("date", sentence("sheets.row.dateAhead"));
  if (text < "1950-01-01") throw new RowRefused("date", sentence("sheets.row.dateLongAgo"));
  return text;
}

/** An attempt that makes the mark, so that the test itself scores it and says whether to believe it. */
interface ReadMark<Code extends TestCode> {
  readonly seen: AttemptOf<Code>;
  /** In grains, where one attempt alone makes no mark. */
  readonly value?: number;
}

const markReaders: { readonly [Code in TestCode]: (cells: Cells) => ReadMark<Code> } = {
  "push-up"(cells) {
    refuseOtherUnit(cells, ["reps", "rep"]);
    return { seen: { how: "tally", reps: count(cells, "mark", null), offAtEnd: 0 } };
  },
  agility(cells) {
    refuseOtherUnit(cells, ["landings", "landing"]);
    const value = grains(cells, "agility");
    const landings = Math.floor(value / 4);
    const seen = { laps: Math.floor(landings / 4), extra: landings % 4, touches: 0 };
    return { value, seen: { direction: "cw", ...seen } };
  },
  vertical(cells) {
    const unit = lengthUnit(cells);
    const height = unit === "in" ? lengthOf(cells, "mark", "in") : grains(cells, "vertical");
    return { seen: { standingReach: usualReach, touchReach: usualReach + height } };
  },
  core: (cells) => ({ seen: { held: timeMark(cells) } }),
  endurance: (cells) => ({ seen: { finished: true, time: timeMark(cells) } }),
};

/** A reach nobody asks about, in mm: of a past mark only the height is known. */
const usualReach = 2000;

function refuseOtherUnit(cells: Cells, known: readonly string[]): void {
  const unit = cells("unit").toLowerCase();
  if (unit !== "" && !known.includes(unit)) {
    throw new RowRefused("unit", sentence("sheets.row.unit", { unit: known[0] ?? "" }));
  }
}

function grains(cells: Cells, test: TestCode): number {
  const text = cells("mark");
  if (text === "") throw new RowRefused("mark", sentence("sheets.row.empty"));
  const read = fromUnit(protocolOf(test).grain, text);
  if ("sentence" in read) throw new RowRefused("mark", read.sentence);
  return read.value;
}

/** "3.00" alone could be minutes; where the unit says seconds, it is seconds. */
function timeMark(cells: Cells): number {
  const unit = cells("unit").toLowerCase();
  const text = cells("mark");
  if (["s", "sec", "seconds"].includes(unit)) {
    return time(cells, "mark", /^[\d.]+$/.test(text) ? `${text} s` : text);
  }
  if (["", "m:ss", "mm:ss", "m:ss.s", "min:s", "h:mm:ss"].includes(unit)) return time(cells, "mark");
  throw new RowRefused("unit", sentence("sheets.row.timeUnit"));
}
