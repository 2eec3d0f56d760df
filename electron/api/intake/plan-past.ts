import { RowRefused } from "../../domain/tests/cells.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { PastRow } from "../../sheets/past.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { allDays } from "../../store/tables/days.ts";
import { addPastMark, pastMarkValue } from "../../store/tables/past-marks.ts";
import { type AppliedRow, keptBack, known, type Planning, type ReadRow, type RowByRow } from "./outcome.ts";
import { finderIn, registerOf } from "./register.ts";

/** Plans the import of past results. A stored mark stays, and a row with another value for it is not imported. */
export function planPast(
  db: ReadableDb,
  rows: readonly ReadRow<PastRow>[],
  { answers }: Pick<Planning, "answers">,
): RowByRow {
  const find = finderIn(registerOf(db), answers);
  const inSheet = new Map<string, number>();
  const days = new Map(
    allDays(db)
      .filter(({ state }) => state !== "planned")
      .map(({ date, title }) => [date, title]),
  );

  function planRow({ line, row }: ReadRow<PastRow>): AppliedRow {
    const athlete = find(row.who);
    const { date, test, variant, value, fingerprint } = row;
    const mark = { athleteId: athlete.id, fingerprint, date, test, variant, value };
    const key = `${athlete.id} ${date} ${fingerprint}`;
    const held = inSheet.get(key) ?? pastMarkValue(db, mark);
    // The same result, though an earlier version kept it less exactly.
    if (held !== undefined && Math.abs(held - value) <= protocolOf(test).equalWithin)
      return known(line, athlete);
    if (held !== undefined) throw new RowRefused("mark", otherMark(row, held));
    inSheet.set(key, value);
    const unusual = row.unusual ?? ownDay(row, days.get(row.date));
    return {
      line,
      status: "new",
      about: athlete,
      unusual,
      was: {},
      joins: false,
      apply: (inside) => addPastMark(inside, mark),
      touches: [athlete.id],
    };
  }

  const outcomes = rows.map((each) => {
    try {
      return planRow(each);
    } catch (error) {
      if (error instanceof RowRefused) return keptBack(each.line, error);
      throw error;
    }
  });
  return { outcomes };
}

/** A result of a date on which this hall held a day itself may be that day's own, which counts already. */
function ownDay({ date }: PastRow, title: string | undefined): Sentence | null {
  return title === undefined ? null : sentence("pastResult.ownDay", { date, title });
}

function otherMark({ test, date }: PastRow, held: number): Sentence {
  const { number } = protocolOf(test).write(held, "cm");
  return sentence("sheets.row.otherMark", { date, held: number });
}
