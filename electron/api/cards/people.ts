import { z } from "zod";
import { isDone } from "../../domain/queue/queue.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { athletesOf } from "../../store/reads/athletes-kept.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { entrants } from "../../store/tables/entrants.ts";
import { marksOfDay } from "../../store/tables/marks.ts";

export const whichCardsSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("all") }),
  z.object({ kind: z.literal("league"), leagueId: z.int() }),
  z.object({ kind: z.literal("athlete"), athleteId: z.int() }),
]);

export type WhichCards = z.infer<typeof whichCardsSchema>;
export type CardPeople = ReturnType<typeof peopleOf>;

/** Somebody with at least one mark on the day, by league and name; a test begun and not done is no mark yet. */
export interface Carded extends Pick<Athlete, "id" | "leagueId" | "league" | "name" | "number"> {
  readonly bib: number | null;
}

export function cardedOf(db: ReadableDb, day: Day): Carded[] {
  const marked = new Set(marksOfDay(db, day.id).flatMap((kept) => (isDone(kept.mark) ? kept.athleteId : [])));
  const bibs = new Map(entrants(db, day.id).map(({ athleteId, bib }) => [athleteId, bib]));
  const athletes = athletesOf(db);
  return [...marked]
    .flatMap((id) => athletes.get(id) ?? [])
    .sort((a, b) => a.place - b.place)
    .map(({ place: _place, ...athlete }) => ({ ...athlete, bib: bibs.get(athlete.id) ?? null }));
}

/** Returns the athletes that were asked for. */
export function chosenOf(all: readonly Carded[], which: WhichCards): readonly Carded[] {
  switch (which.kind) {
    case "all":
      return all;
    case "league":
      return all.filter(({ leagueId }) => leagueId === which.leagueId);
    case "athlete":
      return all.filter(({ id }) => id === which.athleteId);
  }
}

/** Returns who has a card, by league and name as printed, and the number of those who test without a mark yet. */
export function peopleOf(db: ReadableDb, day: Day | null) {
  if (day === null) return { day: null, people: [], leagues: [], without: 0 };
  const carded = cardedOf(db, day);
  const ids = new Set(carded.map(({ id }) => id));
  const testing = entrants(db, day.id).filter(({ state }) => state === "testing");
  return {
    day: { id: day.id, date: day.date, title: day.title, state: day.state },
    people: carded.map(({ id, leagueId, league, name, number, bib }) => ({
      ...{ athleteId: id, leagueId, league, name, number, bib },
    })),
    leagues: [...Map.groupBy(carded, ({ leagueId }) => leagueId)].map(([id, of]) => ({
      ...{ id, name: of[0]?.league ?? "", count: of.length },
    })),
    without: testing.filter(({ athleteId }) => !ids.has(athleteId)).length,
  };
}
