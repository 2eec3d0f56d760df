import { type Cells, RowRefused } from "../domain/tests/cells.ts";
import { fingerprint } from "../domain/tests/fingerprint.ts";
import type { Mark, Plausibility } from "../domain/tests/protocol.ts";
import { defaultParameters, definitionOf, type TestCode } from "../domain/tests/registry.ts";
import { type Sentence, sentence } from "../domain/words.ts";
import { testNamed } from "./cells.ts";
import { variantOf } from "./results.ts";
import { type NamedAthlete, readWho } from "./who.ts";

/** One mark from before this program. */
export interface PastRow {
  readonly who: NamedAthlete;
  /** Day, ISO 8601. */
  readonly date: string;
  readonly test: TestCode;
  readonly variant: string;
  /** In the test's grains. */
  readonly value: number;
  /** Past results count as done by the standard rules: the default parameters. */
  readonly fingerprint: string;
  readonly unusual: Sentence | null;
}

/** Reads one row of past results; `today` is an ISO 8601 day. @throws RowRefused */
export function readPastRow(cells: Cells, today: string): PastRow {
  const who = readWho(cells);
  const date = pastDate(cells("date"), today);
  const test = testNamed(cells);
  const variant = variantOf(cells, test);
  const { protocol, sheet } = definitionOf(test);
  const parameters = defaultParameters(test);
  const mark = sheet.readPast(cells);
  const value = mark.value ?? completeValue(protocol.score(parameters, [mark.seen]));
  const opinion: Plausibility = protocol.plausibility(parameters, mark.seen);
  if (opinion.level === "refuse") throw new RowRefused("mark", opinion.sentence);
  const unusual = opinion.level === "ask" ? opinion.sentence : null;
  return { who, date, test, variant, value, fingerprint: fingerprint(test, variant, parameters), unusual };
}

/** Returns a mark's value; every mark on a sheet is complete. */
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
