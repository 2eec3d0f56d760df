import type { TypicalError } from "../../domain/statistics/change.ts";
import { judge } from "../../domain/tests/judge.ts";
import type { LengthUnit, Mark } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import { againstLast } from "../../domain/tests/written.ts";
import type { Sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { attemptsOfDay, type KeptAttempt, liveAttempts } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { confirmedAttempts } from "../../store/tables/heat-events.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { typicalErrorsOf } from "../noise/errors.ts";
import type { MarkWithNews } from "./marks.ts";

/** Names one mark of a day: its athlete, test and variant. */
export function placeOfMark(mark: Pick<MarkWithNews, "athleteId" | "test" | "variant">): string {
  return `${mark.athleteId} ${mark.test} ${mark.variant}`;
}

/** What decides whether a mark is in doubt. */
interface InQuestion {
  readonly test: TestCode;
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  /** The attempts behind the mark, in the order of entry. */
  readonly standing: readonly KeptAttempt[];
  /** Ids of attempts that somebody looked at again and found right. */
  readonly confirmed: ReadonlySet<string>;
  readonly mark: Mark;
  /** The athlete's last mark, in grains; null without one. */
  readonly previous: number | null;
  readonly lengths: LengthUnit;
  /** The typical error as it was known before the day. */
  readonly error: TypicalError;
}

/** What a mark's live results leave to ask. */
export interface Doubts {
  readonly doubts: Sentence[];
  /** The attempt that they are about, which a correction has to change; null without any. */
  readonly doubted: string | null;
}

/**
 * Returns the questions that paper entry would have asked and nobody has answered yet: a live heat enters first and
 * asks afterwards. What people typed in was asked about before it was saved.
 */
export function doubtsAbout(asked: InQuestion): Doubts {
  const open = asked.standing.filter((attempt) => isOpen(attempt, asked.confirmed));
  const doubts = questionsAbout(asked, open);
  return { doubts, doubted: doubts.length === 0 ? null : doubtedAmong(asked, open) };
}

function questionsAbout(asked: InQuestion, open: readonly KeptAttempt[]): Sentence[] {
  const { test, parameters, standing, confirmed, mark } = asked;
  if (open.length === 0) return [];
  const { questions } = judge(
    test,
    parameters,
    open.map(({ seen }) => seen),
  );
  if (mark.state !== "complete") return [...questions];
  const sure = standing.filter((attempt) => !isOpen(attempt, confirmed));
  if (isScored(asked, sure, mark.value)) return [...questions];
  return [...questions, ...changeAsked(asked, mark.value)];
}

/** True for what a heat entered and nobody has found right yet. */
function isOpen({ id, source }: KeptAttempt, confirmed: ReadonlySet<string>): boolean {
  return source === "heat" && !confirmed.has(id);
}

/** Returns the question about a mark that is far from the last one; none where it is near enough. */
function changeAsked({ test, previous, lengths, error }: InQuestion, value: number): Sentence[] {
  if (previous === null) return [];
  const change = againstLast(test, previous, value, lengths, error);
  return change.level === "ask" ? [change.sentence] : [];
}

/**
 * Returns the newest attempt that raises a question by itself or makes a mark far from the last one; where only all
 * together do, the newest.
 */
function doubtedAmong(asked: InQuestion, open: readonly KeptAttempt[]): string | null {
  const newest = open.findLast((attempt) => isDoubtedAlone(asked, attempt)) ?? open.at(-1);
  return newest?.id ?? null;
}

function isDoubtedAlone(asked: InQuestion, attempt: KeptAttempt): boolean {
  const { test, parameters, mark } = asked;
  if (judge(test, parameters, [attempt.seen]).questions.length > 0) return true;
  if (mark.state !== "complete" || !isScored(asked, [attempt], mark.value)) return false;
  return changeAsked(asked, mark.value).length > 0;
}

/** True if these attempts alone come to that mark. */
function isScored(
  { test, parameters }: InQuestion,
  attempts: readonly KeptAttempt[],
  value: number,
): boolean {
  if (attempts.length === 0) return false;
  const { score, attempt } = protocolOf(test);
  const alone = score(
    parameters,
    attempts.map(({ seen }) => attempt.parse(seen)),
  );
  return alone.state === "complete" && alone.value === value;
}

/** A mark that waits for an answer, and what is asked. */
export interface DoubtedMark {
  readonly mark: MarkWithNews;
  readonly doubts: readonly Sentence[];
  /** The attempt that they are about: whoever confirms this one confirms all before it. */
  readonly attemptId: string;
}

/**
 * Returns those of a day's marks that wait for an answer to a doubt. `marks` is not asked for them where nothing is left
 * to ask; `lengths` is the unit of the questions.
 */
export function doubtedMarks(
  db: ReadableDb,
  day: Day,
  marks: () => readonly MarkWithNews[],
  lengths: LengthUnit = "cm",
): DoubtedMark[] {
  const confirmed = confirmedAttempts(db, day.id);
  const open = liveAttempts(db, day.id).filter(({ id }) => !confirmed.has(id));
  if (open.length === 0) return [];
  const places = new Set(open.map(placeOfMark));
  const standing = attemptsOfDay(db, day.id).filter((attempt) => attempt.void === null);
  const attempts = Map.groupBy(standing, placeOfMark);
  const errors = typicalErrorsOf(db, day.id);
  const parameters = new Map<TestCode, unknown>();
  const asked = marks().filter((mark) => places.has(placeOfMark(mark)));
  return asked.flatMap((mark) => {
    const { test, news } = mark;
    const own = attempts.get(placeOfMark(mark)) ?? [];
    if (!parameters.has(test)) parameters.set(test, parametersOf(db, day.id, test));
    const { doubts, doubted } = doubtsAbout({
      ...{ test, parameters: parameters.get(test), standing: own, confirmed, lengths },
      ...{ mark: mark.mark, previous: news?.previous ?? null, error: errors[test] },
    });
    return doubted === null ? [] : { mark, doubts, attemptId: doubted };
  });
}
