import { isFarApart } from "../../domain/study/far.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import { marksOfAthlete } from "../../store/tables/marks.ts";
import type { Study, StudySeries } from "../../store/tables/studies.ts";
import { typicalErrorsOf } from "../noise/errors.ts";
import { readingsBySeries } from "./rows.ts";

type Named = Pick<Athlete, "id" | "name">;

/** A reading before it is added. */
interface Read {
  /** The series that it is brought for. */
  readonly position: number;
  /** In grains. */
  readonly value: number;
}

/** What a reading is held against before it is added. */
export interface Beside {
  /** Returns why no reading of an athlete can count: the day has no result to compare it with. Null where one can. */
  readonly whyNot: (athlete: Named) => Sentence | null;
  /** Returns the question about a reading far from the athlete's in another series; null for a likely one. */
  readonly ask: (athlete: Named, read: Read, lengths: LengthUnit) => Sentence | null;
}

/** Reads once what the readings of a study are held against. */
export function besideOf(db: ReadableDb, study: Study): Beside {
  const { series, columns } = readingsBySeries(db, study);
  const error = typicalErrorsOf(db, 0)[study.test];
  return {
    whyNot(athlete) {
      const lacking = series.find(({ dayId }, at) => dayId !== null && !columns[at]?.has(athlete.id));
      return lacking === undefined ? null : whyLacking(db, study, lacking, athlete);
    },
    ask({ id, name }, { position, value }, lengths) {
      const at = series.findIndex((each, index) => each.position !== position && columns[index]?.has(id));
      const held = columns[at]?.get(id);
      if (held === undefined || !isFarApart(study.test, value, held, error)) return null;
      const number = (grains: number) => protocolOf(study.test).write(grains, lengths).number;
      return sentence("study.far", { name, held: number(held), typed: number(value) });
    },
  };
}

/** Says what the day has of an athlete in place of a result that can be compared. */
function whyLacking(
  db: ReadableDb,
  { test, variant }: Study,
  { dayId, judge }: StudySeries,
  { id, name }: Named,
): Sentence {
  const marks = dayId === null ? [] : marksOfAthlete(db, dayId, id).filter((each) => each.test === test);
  const own = marks.find((each) => each.variant === variant);
  if (marks.length === 0) return sentence("study.notTested", { name, test });
  if (own === undefined) return sentence("study.otherWay", { name, test });
  const { mark } = own;
  if (mark.state !== "complete" || mark.trials !== undefined)
    return sentence("study.notComplete", { name, test });
  return sentence("study.notByJudge", { name, judge });
}
