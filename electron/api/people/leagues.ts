import { z } from "zod";
import { fold } from "../../domain/people/fold.ts";
import { Refusal } from "../../domain/refusal.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import type { Topic } from "../../store/connection/store.ts";
import type { StepKind } from "../../store/steps/kinds.ts";
import { joinLeagues, renameLeague } from "../../store/steps/leagues.ts";
import { stepById } from "../../store/steps/steps.ts";
import { takeIdentityStep } from "../../store/steps/take-step.ts";
import { allAthletes, leagues } from "../../store/tables/athletes.ts";
import type { Desk } from "../door/desk.ts";
import { initialsSchema } from "../door/said.ts";
import { allow } from "../door/trpc.ts";
import { forgetNames } from "./search.ts";

const changeInput = z.object({
  leagueId: z.int(),
  /** The new spelling, or that of the league that its athletes go to. */
  name: z.string().max(80),
});

/** Says what a new name of a league would do: whether it is another league's, how many go there, what stands in the way. */
export const beforeLeague = allow("organiser")
  .input(changeInput)
  .query(({ ctx: { desk }, input }) => {
    const { db } = desk.store;
    const { league, other } = meant(db, input);
    return {
      joins: other?.name ?? null,
      athletes: idsOf(db, league.id).length,
      blocked: other === undefined ? [] : whyNotJoined(db, league.id, other.id),
    };
  });

/** Renames a league; where another one has that name, its athletes go there with all that is theirs. */
export const changeLeague = allow("organiser")
  .input(changeInput.extend({ stepId: z.uuid(), by: initialsSchema }))
  .mutation(({ ctx: { desk }, input: { stepId, by, ...input } }) => {
    desk.store.write(leagueTopics, (db) => {
      if (stepById(db, stepId) !== undefined) return;
      const { league, name, other } = meant(db, input);
      if (other === undefined) {
        takeIdentityStep(db, stepAs(desk, stepId, by, "league-renamed"), [], () =>
          renameLeague(db, league.id, name, fold(name)),
        );
      } else joinInto(db, league.id, other.id, stepAs(desk, stepId, by, "leagues-joined"));
    });
    forgetNames(desk.store);
  });

const leagueTopics: readonly Topic[] = ["people", "entrants"];

function stepAs(desk: Desk, id: string, by: string, kind: StepKind) {
  return { id, kind, by, at: desk.now().toISOString(), file: "", counts: {} };
}

function joinInto(db: WritableDb, goneId: number, keptId: number, step: ReturnType<typeof stepAs>): void {
  const [why] = whyNotJoined(db, goneId, keptId);
  if (why !== undefined) throw new Refusal("conflict", why);
  takeIdentityStep(db, step, idsOf(db, goneId), () => joinLeagues(db, goneId, keptId));
}

/** @throws Refusal for a league that is not there, or a name that can't be one */
function meant(db: ReadableDb, { leagueId, name: typed }: z.infer<typeof changeInput>) {
  const all = leagues(db);
  const league = all.find(({ id }) => id === leagueId);
  if (league === undefined) throw new Refusal("not-found", sentence("leagues.unknown"));
  const name = typed.replace(/\s+/g, " ").trim().normalize("NFC");
  if (name === "") throw new Refusal("bad-input", sentence("checkIn.leagueMissing"));
  const other = all.find((each) => each.id !== leagueId && fold(each.name) === fold(name));
  return { league, name, other };
}

function idsOf(db: ReadableDb, leagueId: number): number[] {
  return allAthletes(db).flatMap((athlete) => (athlete.leagueId === leagueId ? [athlete.id] : []));
}

/** Athletes of both leagues with one number, or one name and no number: who they are has to be said first. */
function whyNotJoined(db: ReadableDb, goneId: number, keptId: number): Sentence[] {
  const all = allAthletes(db);
  const key = ({ number, name }: { number: string; name: string }) =>
    number === "" ? fold(name) : `#${number}`;
  const there = new Map(all.flatMap((each) => (each.leagueId === keptId ? [[key(each), each]] : [])));
  return all.flatMap((each) => {
    const other = each.leagueId === goneId ? there.get(key(each)) : undefined;
    if (other === undefined) return [];
    return [sentence("leagues.both", { first: each.name, second: other.name, number: each.number || "–" })];
  });
}
