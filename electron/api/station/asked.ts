import type { TypicalError } from "../../domain/statistics/change.ts";
import type { LengthUnit, Mark } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import { againstLast } from "../../domain/tests/written.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { standingPlaces } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import type { Told } from "../door/shapes.ts";

/** What an entry is of, and the unit of lengths in questions about it. */
interface Asked {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly lengths: LengthUnit;
}

/** Asks about a second variant on one day, which is possible but more often a slip. */
export function askAboutVariant(db: ReadableDb, day: Day, entry: Asked): Sentence[] {
  if (protocolOf(entry.test).variants.length < 2) return [];
  const standing = standingPlaces(db, day.id, entry.athleteId, entry.test);
  const other = standing.find(({ variant }) => variant !== entry.variant);
  return other === undefined
    ? []
    : [sentence(`station.otherVariant.${other.variant}`, { by: other.enteredBy })];
}

/** Asks about a mark far from the athlete's last; once per mark. */
export function askAboutChange(
  entry: Asked,
  before: Mark | null,
  after: Told | null,
  error: TypicalError,
): Sentence[] {
  const previous = after?.news?.previous ?? null;
  if (after?.mark.state !== "complete" || previous === null) return [];
  if (before?.state === "complete" && before.value === after.mark.value) return [];
  const opinion = againstLast(entry.test, previous, after.mark.value, entry.lengths, error);
  return opinion.level === "ask" ? [opinion.sentence] : [];
}
