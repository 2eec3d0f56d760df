import { type Cells, RowRefused } from "../domain/tests/cells.ts";
import { fingerprint } from "../domain/tests/fingerprint.ts";
import type { Mark, Plausibility } from "../domain/tests/protocol.ts";
import { defaultParameters, definitionOf, type TestCode } from "../domain/tests/registry.ts";
import { type Sentence, sentence } from "../domain/words.ts";
import { testNamed } from "./cells.ts";
import { type DateOrder, dayOf } from "./dates.ts";
import { gathering } from "./gather.ts";
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

/** The facts about each row that only the whole sheet of past results tells. */
export interface PastWays {
  /** ISO 8601 day. */
  readonly today: string;
  readonly order: DateOrder;
}

/** Reads one row of past results. @throws RowRefused */
export function readPastRow(cells: Cells, ways: PastWays): PastRow {
  const all = gathering();
  const who = all.of(() => readWho(cells), null);
  const date = all.of(() => pastDate(cells("date"), ways), "");
  const test = all.of(() => testNamed(cells), null);
  const variant = test === null ? "" : all.of(() => variantOf(cells, test), "");
  const mark = test === null ? null : all.of(() => markIn(cells, test), null);
  const row = all.done({ date, variant });
  // What is null here was refused, and the row with it.
  return pastRow({ ...row, who: who as NamedAthlete, test: test as TestCode }, mark as PastMark);
}

/** A result as it stands in `mark`, with what is unusual about it. */
type PastMark = Pick<PastRow, "value" | "unusual">;

function pastRow(row: Pick<PastRow, "who" | "date" | "test" | "variant">, mark: PastMark): PastRow {
  return { ...row, ...mark, fingerprint: fingerprint(row.test, row.variant, defaultParameters(row.test)) };
}

/** Reads a result of a test from `mark` and `unit`. @throws RowRefused */
export function markIn(cells: Cells, test: TestCode): PastMark {
  const { protocol, sheet } = definitionOf(test);
  const parameters = defaultParameters(test);
  const mark = sheet.readPast(cells);
  const value = mark.value ?? completeValue(protocol.score(parameters, [mark.seen]));
  const opinion: Plausibility = protocol.plausibility(parameters, mark.seen);
  if (opinion.level === "refuse") throw new RowRefused("mark", opinion.sentence);
  return { value, unusual: opinion.level === "ask" ? opinion.sentence : null };
}

/** Returns a mark's value; every mark on a sheet is complete. */
function completeValue(mark: Mark): number {
  if (mark.state === "complete") return mark.value;
  throw new RowRefused("mark", sentence("sheets.row.empty"));
}

function pastDate(text: string, { today, order }: PastWays): string {
  const day = dayOf(text, order);
  if (day === null) throw new RowRefused("date", sentence("sheets.row.date"));
  if (day > today) throw new RowRefused("date", sentence("sheets.row.dateAhead"));
  if (day < "1950-01-01") throw new RowRefused("date", sentence("sheets.row.dateLongAgo"));
  return day;
}
