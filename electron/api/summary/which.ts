import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { everybody } from "../../store/reads/present.ts";
import { leagues } from "../../store/tables/athletes.ts";
import { allDays, type Day, dayAtHand, dayById } from "../../store/tables/days.ts";

export const whichSummarySchema = z.object({
  /** Without it the day at hand, else the newest one held. */
  dayId: z.int().optional(),
  leagueId: z.int().nullable().default(null),
});

type WhichSummary = z.infer<typeof whichSummarySchema>;

/** A day and, if requested, one of its leagues. */
export interface Chosen {
  readonly day: Day;
  /** Null: the whole day. */
  readonly league: { readonly id: number; readonly name: string } | null;
  /** Those with somebody on the day's list, by name. */
  readonly leagues: { readonly id: number; readonly name: string; readonly listed: number }[];
}

/**
 * Returns the day and league to sum up; null while there is no day at all.
 * @throws Refusal `not-found` when the day or the league is unknown, or the league has nobody on the day's list.
 */
export function choose(db: ReadableDb, { dayId, leagueId }: WhichSummary): Chosen | null {
  const day = dayId === undefined ? (dayAtHand(db) ?? allDays(db)[0]) : dayById(db, dayId);
  if (day === undefined && dayId !== undefined) throw new Refusal("not-found", sentence("summary.noDay"));
  if (day === undefined) return null;
  const all = leaguesOf(db, day);
  const league = all.find(({ id }) => id === leagueId);
  if (leagueId !== null && league === undefined) throw new Refusal("not-found", sentence("summary.noLeague"));
  return { day, league: league === undefined ? null : { id: league.id, name: league.name }, leagues: all };
}

/** @throws Refusal like {@link choose}, and when there is no day at all. */
export function requireChosen(db: ReadableDb, which: WhichSummary): Chosen {
  const chosen = choose(db, which);
  if (chosen === null) throw new Refusal("not-found", sentence("summary.noDay"));
  return chosen;
}

function leaguesOf(db: ReadableDb, day: Day): Chosen["leagues"] {
  const people = Map.groupBy(everybody(db, day.id), ({ league }) => league);
  return leagues(db).flatMap(({ id, name }) => {
    const listed = people.get(name)?.length ?? 0;
    return listed === 0 ? [] : [{ id, name, listed }];
  });
}
