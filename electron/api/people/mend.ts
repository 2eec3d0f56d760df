import { randomUUID } from "node:crypto";
import { z } from "zod";
import { fold } from "../../domain/people/fold.ts";
import { checkIdentity } from "../../domain/people/identity.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { WritableDb } from "../../store/connection/database.ts";
import { takeIdentityStep } from "../../store/steps/take-step.ts";
import {
  type Athlete,
  athleteByIdentity,
  dropEmptyLeague,
  leagueNamed,
  updateAthlete,
} from "../../store/tables/athletes.ts";
import { dayAtHand } from "../../store/tables/days.ts";
import { isoDate } from "../door/calendar.ts";
import { allow } from "../door/trpc.ts";
import { requireAthlete } from "./person.ts";
import { forgetNames } from "./search.ts";

/** As long as a roster allows. */
const line = z.string().max(200);
const longest = 80;

const mendInput = z.object({
  athleteId: z.int(),
  name: line,
  number: z.string().max(20),
  league: line,
  birthYear: z.int().nullable(),
  category: z.enum(["women", "men", "open"]).nullable(),
});

/**
 * Corrects an athlete's identity, or moves them to another league; the same again changes nothing. Their attempts stay
 * theirs, and the history keeps who they were.
 */
export const mend = allow("organiser")
  .input(mendInput)
  .mutation(({ ctx: { desk }, input }) => {
    desk.store.write(["people", "entrants"], (db) => mendAthlete(db, input, desk.now()));
    forgetNames(desk.store);
  });

/** @throws Refusal for unreadable input, or for a number or name that belongs to another athlete. */
function mendAthlete(db: WritableDb, typed: z.infer<typeof mendInput>, now: Date): void {
  const athlete = requireAthlete(db, typed.athleteId);
  const who = checkIdentity(typed, dayAtHand(db)?.date ?? isoDate(now));
  const name = oneLine(who.name);
  const league = oneLine(who.league);
  const same = athleteByIdentity(db, league, who.number, name);
  if (same !== undefined && same.id !== athlete.id) refuseTaken(same);
  const { number, birthYear } = who;
  const after = { ...athlete, name, number, birthYear, category: typed.category };
  const isSame = fold(league) === fold(athlete.league) && Object.entries(after).every(isIn(athlete));
  if (isSame) return;
  const step = {
    id: randomUUID(),
    kind: "changed",
    at: now.toISOString(),
    by: "",
    file: "",
    counts: {},
  } as const;
  takeIdentityStep(db, step, [athlete.id], () => {
    const leagueId = leagueOf(db, athlete, league);
    updateAthlete(db, athlete.id, { ...after, leagueId });
    if (leagueId !== athlete.leagueId) dropEmptyLeague(db, athlete.leagueId);
  });
}

function isIn(athlete: Athlete) {
  const before: Readonly<Record<string, unknown>> = { ...athlete };
  return ([key, value]: [string, unknown]) => before[key] === value;
}

/** Cleans text as in rosters: one line, one space between words, at most 80 characters. */
function oneLine(typed: string): string {
  const text = typed.replace(/\s+/g, " ").normalize("NFC");
  if (text.length > longest)
    throw new Refusal("bad-input", sentence("sheets.row.tooLong", { most: longest }));
  return text;
}

function refuseTaken({ name, number, league }: Athlete): never {
  if (number === "") throw new Refusal("conflict", sentence("mend.nameTaken", { name, league }));
  throw new Refusal("conflict", sentence("mend.numberTaken", { number, name, league }));
}

/** Returns the league by name. One with only this athlete may get a new spelling. */
function leagueOf(db: WritableDb, athlete: Athlete, league: string): number {
  return fold(league) === fold(athlete.league) ? athlete.leagueId : leagueNamed(db, league);
}
