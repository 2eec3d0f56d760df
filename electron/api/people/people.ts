import { z } from "zod";
import { nextTest } from "../../domain/queue/order.ts";
import { isDone } from "../../domain/queue/queue.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Store } from "../../store/connection/store.ts";
import {
  type Athlete,
  allAthletes,
  athleteById,
  leagues,
  updateAthlete,
} from "../../store/tables/athletes.ts";
import { attemptsOfAthlete } from "../../store/tables/attempts.ts";
import { type Day, dayAtHand } from "../../store/tables/days.ts";
import { type Entrant, entrantOf, entrants } from "../../store/tables/entrants.ts";
import { marksOfDay } from "../../store/tables/marks.ts";
import { isoDate } from "../door/calendar.ts";
import { lengthsSchema } from "../door/shapes.ts";
import { allow, router } from "../door/trpc.ts";
import { attemptView, toldOf } from "../marks/attempts.ts";
import { tellMarks } from "../marks/marks.ts";
import { beforeErasing, erase, erasures, wipeAgain } from "./erase.ts";
import { heldAbout } from "./held.ts";
import { heldSchema } from "./held-schema.ts";
import { beforeJoining, join } from "./join.ts";
import { beforeLeague, changeLeague } from "./leagues.ts";
import { mend } from "./mend.ts";
import { pastResults, voidPast } from "./past.ts";
import { type Person, personOf, requireAthlete } from "./person.ts";
import { remove } from "./remove.ts";
import { findAthletes } from "./search.ts";
import { seriesOf } from "./series.ts";
import { steps, undo } from "./steps.ts";

const pageSize = 50;

const listInput = z.object({
  query: z.string().max(200).default(""),
  leagueId: z.int().nullable().default(null),
  /** Those of the day who have tests left, or whose consents are missing or not asked about yet. */
  need: z.enum(["all", "notDone", "guardian", "notAsked"]).default("all"),
  /** From 0. */
  page: z.int().min(0).default(0),
});

/** Returns the athletes that match query and league, by match, or by league and name. */
function chosen(store: Store, input: z.infer<typeof listInput>, list: readonly Entrant[]): Athlete[] {
  const { query, leagueId } = input;
  const listed = new Map(list.map((entrant) => [entrant.athleteId, entrant]));
  const all =
    query.trim() === ""
      ? allAthletes(store.db)
      : findAthletes(store, query, listed).flatMap((id) => athleteById(store.db, id) ?? []);
  return leagueId === null ? all : all.filter((athlete) => athlete.leagueId === leagueId);
}

/** Counts each athlete's marks on the day, complete and incomplete ones. */
function marksByAthlete(store: Store, day: Day | null): ReadonlyMap<number, number> {
  const marks = day === null ? [] : marksOfDay(store.db, day.id);
  const tests = Map.groupBy(marks, ({ athleteId }) => athleteId);
  return new Map([...tests].map(([id, some]) => [id, new Set(some.map(({ test }) => test)).size]));
}

/** Whether somebody is among those that a list is narrowed to. */
function needs(
  person: Person & { readonly tested: number },
  need: z.infer<typeof listInput>["need"],
): boolean {
  const { state, tested, leftOut, mayBeUnder18, guardianConsent, asked } = person;
  const isHere = state === "testing" || state === "expected";
  if (need === "notDone") return isHere && tested + leftOut.length < testCodes.length;
  if (need === "guardian") return mayBeUnder18 && !guardianConsent;
  return need === "all" || !asked;
}

/** Everybody in the store: identity, consents, results, and deletion. */
export const people = router({
  mend,
  remove,
  beforeErasing,
  erase,
  wipeAgain,
  erasures,
  pastResults,
  voidPast,
  beforeJoining,
  join,
  beforeLeague,
  changeLeague,
  steps,
  undo,

  /** Returns all data about one athlete, to be given to them. */
  held: allow("organiser")
    .input(z.object({ athleteId: z.int() }))
    .output(heldSchema)
    .query(({ ctx: { desk }, input: { athleteId } }) => {
      const about = { made_at: desk.now().toISOString(), invented: desk.kind === "demo" };
      return heldAbout(desk.store.db, requireAthlete(desk.store.db, athleteId), about);
    }),

  list: allow("organiser")
    .input(listInput)
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      const day = dayAtHand(db) ?? null;
      const tested = marksByAthlete(desk.store, day);
      const today = isoDate(desk.now());
      const listedOf = (athlete: Athlete) => ({
        ...personOf(db, day, athlete, today),
        tested: tested.get(athlete.id) ?? 0,
      });
      const found = chosen(desk.store, input, day === null ? [] : entrants(db, day.id));
      const all = input.need === "all" ? found : found.filter((each) => needs(listedOf(each), input.need));
      const pages = Math.max(1, Math.ceil(all.length / pageSize));
      const page = Math.min(input.page, pages - 1);
      const shown = all.slice(page * pageSize, (page + 1) * pageSize).map(listedOf);
      return { people: shown, total: all.length, page, pages, leagues: leagues(db) };
    }),

  /** Returns one athlete: consents, today's marks with their news, today's attempts, and earlier marks. */
  get: allow("organiser")
    .input(z.object({ athleteId: z.int(), lengths: lengthsSchema }))
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      const athlete = requireAthlete(db, input.athleteId);
      return buildAthletePage(db, dayAtHand(db) ?? null, athlete, isoDate(desk.now()), input.lengths);
    }),

  /** Changes an athlete's consents, at any time; the big screen follows at once. */
  setConsent: allow("organiser", "check-in")
    .input(
      z.object({
        athleteId: z.int(),
        board: z.enum(["name", "bib", "hidden"]),
        share: z.boolean(),
        /** Left out: unchanged. */
        guardianConsent: z.boolean().optional(),
      }),
    )
    .mutation(({ ctx: { desk }, input: { athleteId, guardianConsent, ...consents } }) =>
      desk.store.write(["people", "entrants"], (db) => {
        const athlete = requireAthlete(db, athleteId);
        const seen = guardianConsent ?? athlete.guardianConsent;
        updateAthlete(db, athleteId, { ...athlete, ...consents, guardianConsent: seen, asked: true });
      }),
    ),
});

/** Returns all data about one athlete, for their page. @param today ISO 8601, for use without a current day. */
function buildAthletePage(
  db: ReadableDb,
  day: Day | null,
  athlete: Athlete,
  today: string,
  lengths: LengthUnit,
) {
  const person = personOf(db, day, athlete, today);
  const { athleteId, bib, name, number, league } = person;
  const marks = day === null ? [] : tellMarks(db, day, athleteId);
  const done = new Set(marks.filter(({ mark }) => isDone(mark)).map(({ test }) => test));
  const attempts = day === null ? [] : attemptsOfAthlete(db, day.id, athleteId);
  return {
    ...person,
    /** When today's state was reached; null for an athlete not on the list. */
    since: day === null ? null : (entrantOf(db, day.id, athleteId)?.since ?? null),
    /** The next test; null when none is left or the athlete does not test. */
    next: person.state === "testing" ? nextTest(done, new Set(person.leftOut)) : null,
    marks: marks.map((mark) => ({ ...toldOf(mark, lengths), test: mark.test })),
    /** Every attempt of today in the order of entry, void ones included. */
    attempts: attempts.map((attempt) => attemptView(attempt, { athleteId, bib, name, number, league })),
    ...seriesOf(db, day, athleteId, marks, lengths),
  };
}
