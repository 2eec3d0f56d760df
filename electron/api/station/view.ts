import { z } from "zod";
import { isDone, type Runner } from "../../domain/queue/queue.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { missingOf, writeMark } from "../../domain/tests/written.ts";
import type { Sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { everybody } from "../../store/reads/present.ts";
import { newestAttempts } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { leftOut } from "../../store/tables/entrants.ts";
import type { Holder } from "../../store/tables/heats.ts";
import { type KeptMark, marksOfDay, parametersOf } from "../../store/tables/marks.ts";
import {
  attemptSchema,
  calledElsewhereSchema,
  sentenceSchema,
  stationPersonSchema,
  writtenSchema,
} from "../door/shapes.ts";
import { attemptView, personIn } from "../marks/attempts.ts";
import { tellMarks } from "../marks/marks.ts";
import { doubtedMarks } from "../marks/unanswered.ts";
import { inCallOrder } from "./call-order.ts";
import { calledElsewhere, callerOf } from "./callers.ts";
import { keptUntilWrite } from "./kept-views.ts";
import { queueOf, runnersOf } from "./runners.ts";

const viewSchema = z.object({
  open: z.boolean(),
  /** The frozen parameters; parse with the test's own schema. */
  parameters: z.unknown(),
  restMinutes: z.int(),
  counts: z.object({
    done: z.int(),
    /** Number of athletes whose next test this is. */
    waiting: z.int(),
    /** Number of athletes with other tests to do before it. */
    later: z.int(),
    leftOut: z.int(),
  }),
  /** The queue, or its beginning; `counts.waiting` is the whole of it. */
  queue: z.array(
    z.object({
      who: stationPersonSchema,
      waitingSince: z.string(),
      readyAt: z.string(),
      calledAt: z.string().nullable(),
      calledElsewhere: calledElsewhereSchema,
      /** The missing part of a test that was begun. */
      begun: sentenceSchema.nullable(),
    }),
  ),
  /** The newest attempts with the athlete's mark of today; no mark for a void attempt. */
  recent: z.array(
    z.object({
      attempt: attemptSchema,
      written: writtenSchema.nullable(),
      /** What a live heat could not ask before it entered this attempt; empty once it is answered. */
      doubts: z.array(sentenceSchema),
    }),
  ),
  /** Athletes who skip this test, and the reasons; only for the organiser, who can put them back. */
  skipped: z.array(z.object({ who: stationPersonSchema, reason: z.string(), by: z.string() })),
});

type View = z.infer<typeof viewSchema>;

const newest = 15;

/** Which station's screen is looked at, whose, and when (ISO 8601). */
interface Seen {
  readonly test: TestCode;
  readonly lengths: LengthUnit;
  readonly holder: Holder;
  readonly now: string;
  /** So many places of the queue, from its beginning. */
  readonly most: number;
}

/** What a station's screens are told, held to the schema once for all of them. */
const kept = keptUntilWrite<View>();

/** Returns everything on one station's screen. */
export function view(db: ReadableDb, day: Day, seen: Seen): View {
  const { test, lengths, now, most } = seen;
  const holder = callerOf(db, day, test, seen.holder);
  return kept(db, day, { test, now }, [lengths, holder, most], () =>
    viewSchema.parse(viewOf(db, day, { ...seen, holder })),
  );
}

function viewOf(db: ReadableDb, day: Day, { test, lengths, holder, now, most }: Seen): View {
  const people = new Map(everybody(db, day.id).map((who) => [who.athleteId, who]));
  const marks = marksOfDay(db, day.id).filter((mark) => mark.test === test);
  const runners = runnersOf(db, day, now);
  const queue = inCallOrder(db, day, queueOf(db, day, test, now), { test, now });
  const recent = newestAttempts(db, day.id, test, newest);
  const elsewhere = calledElsewhere(db, day, { test, holder });
  const shownHere = new Set(recent.map(({ athleteId }) => athleteId));
  const doubted = doubtedMarks(
    db,
    day,
    () => tellMarks(db, day).filter((mark) => mark.test === test && shownHere.has(mark.athleteId)),
    lengths,
  );
  return {
    open: day.state === "open",
    parameters: parametersOf(db, day.id, test),
    restMinutes: day.restMinutes,
    counts: countsOf(test, marks, runners, queue.length),
    queue: queue.slice(0, most).map(({ athleteId, waitingSince, readyAt, calledAt }) => ({
      who: personIn(people, athleteId),
      ...{ waitingSince, readyAt, calledAt, calledElsewhere: elsewhere.get(athleteId) ?? null },
      begun: begun(marks.find((mark) => mark.athleteId === athleteId)),
    })),
    recent: recent.map((attempt) => {
      const mark = marks.find(
        (each) => each.athleteId === attempt.athleteId && each.variant === attempt.variant,
      );
      const shown = attempt.void === null && mark !== undefined;
      return {
        attempt: attemptView(attempt, personIn(people, attempt.athleteId)),
        written: shown ? writeMark(test, mark.mark, lengths) : null,
        doubts: [...(doubted.find(({ attemptId }) => attemptId === attempt.id)?.doubts ?? [])],
      };
    }),
    skipped: leftOut(db, day.id)
      .filter((each) => each.test === test && each.kind === "skip")
      .map(({ athleteId, reason, decidedBy }) => ({
        who: personIn(people, athleteId),
        reason,
        by: decidedBy,
      })),
  };
}

function countsOf(
  test: TestCode,
  marks: readonly KeptMark[],
  runners: readonly Runner[],
  waiting: number,
): View["counts"] {
  const done = new Set(marks.filter(({ mark }) => isDone(mark)).map(({ athleteId }) => athleteId));
  const todo = runners.filter((runner) => !runner.done.has(test));
  const left = todo.filter((runner) => runner.leftOut.has(test)).length;
  return { done: done.size, waiting, later: todo.length - left - waiting, leftOut: left };
}

/** Returns the missing part of a test that was begun. */
function begun(mark: KeptMark | undefined): Sentence | null {
  if (mark?.mark.state !== "incomplete") return null;
  return missingOf(mark.test, mark.mark.missing);
}
