import { fold } from "../../domain/people/fold.ts";
import { RowRefused } from "../../domain/tests/cells.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { PastRow } from "../../sheets/past.ts";
import type { NamedAthlete } from "../../sheets/who.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import { allDays } from "../../store/tables/days.ts";
import { addPastMark, pastMarkValue } from "../../store/tables/past-marks.ts";
import { keptBack, known, type ReadRow, type RowOutcome } from "./outcome.ts";
import { athleteNamed, registerOf } from "./register.ts";

/** Plans the import of past results. A stored mark stays, and a row with another value for it is not imported. */
export function planPast(db: ReadableDb, rows: readonly ReadRow<PastRow>[]): RowOutcome[] {
  const register = registerOf(db);
  const inSheet = new Map<string, number>();
  const days = new Map(
    allDays(db)
      .filter(({ state }) => state !== "planned")
      .map(({ date, title }) => [date, title]),
  );

  function planRow({ line, row }: ReadRow<PastRow>): RowOutcome {
    const athlete = athleteNamed(register, row.who);
    const { date, test, variant, value, fingerprint } = row;
    const mark = { athleteId: athlete.id, fingerprint, date, test, variant, value };
    const key = `${athlete.id} ${date} ${fingerprint}`;
    const held = inSheet.get(key) ?? pastMarkValue(db, mark);
    if (held === value) return known(line, athlete);
    if (held !== undefined) throw new RowRefused("mark", otherMark(row, held));
    inSheet.set(key, value);
    const unusual = row.unusual ?? otherName(row.who, athlete) ?? ownDay(row, days.get(row.date));
    return {
      line,
      status: "new",
      about: athlete,
      unusual,
      was: {},
      joins: false,
      apply: (inside) => addPastMark(inside, mark),
    };
  }

  return rows.map((each) => {
    try {
      return planRow(each);
    } catch (error) {
      if (error instanceof RowRefused) return keptBack(each.line, error);
      throw error;
    }
  });
}

/** A result of a date on which this hall held a day itself may be that day's own, which counts already. */
function ownDay({ date }: PastRow, title: string | undefined): Sentence | null {
  return title === undefined ? null : sentence("pastResult.ownDay", { date, title });
}

function otherMark({ test, date }: PastRow, held: number): Sentence {
  const { number } = protocolOf(test).write(held, "cm");
  return sentence("sheets.row.otherMark", { date, held: number });
}

/** Returns a warning when the row has another name: the number decides, but that deserves a look. */
export function otherName(who: NamedAthlete, athlete: Athlete): Sentence | null {
  if (who.name === "" || fold(who.name) === fold(athlete.name)) return null;
  return sentence("sheets.row.otherName", { name: athlete.name, sheet: who.name });
}
