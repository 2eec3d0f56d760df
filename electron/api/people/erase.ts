import { randomUUID } from "node:crypto";
import { z } from "zod";
import { clockOf } from "../../domain/heats/fold.ts";
import { fold } from "../../domain/people/fold.ts";
import { Refusal } from "../../domain/refusal.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Store, topics } from "../../store/connection/store.ts";
import { eraseAthlete } from "../../store/erasure/erase.ts";
import { allErasures, type Erasure, erasureById, wipeIsDue } from "../../store/erasure/erase-log.ts";
import { countMentions } from "../../store/erasure/erase-mentions.ts";
import { heldRows } from "../../store/erasure/held.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import { dayAtHand } from "../../store/tables/days.ts";
import { eventsOf } from "../../store/tables/heat-events.ts";
import { takenLanes } from "../../store/tables/heat-lanes.ts";
import { heatById } from "../../store/tables/heats.ts";
import { namelessOf } from "../../store/tables/nameless.ts";
import type { Desk } from "../door/desk.ts";
import { initialsSchema } from "../door/said.ts";
import { allow } from "../door/trpc.ts";
import { uploads } from "../intake/uploads.ts";
import { requireAthlete } from "./person.ts";
import { whyNotRemoved } from "./remove.ts";
import { forgetNames } from "./search.ts";

/** Returns the data to be deleted and to be kept, before anybody decides. */
export const beforeErasing = allow("organiser")
  .input(z.object({ athleteId: z.int() }))
  .query(async ({ ctx: { desk }, input: { athleteId } }) => {
    const { db } = desk.store;
    const athlete = requireAthlete(db, athleteId);
    const rows = heldRows(db, athleteId);
    return {
      days: rows.entrant.length,
      attempts: rows.attempt.length,
      pastMarks: rows.past_mark.length,
      /** Number of marks that stay without a name. */
      nameless: namelessOf(db, athlete, randomUUID).length,
      /** Number of others' notes and reasons with the name. */
      mentions: countMentions(db, athleteId, athlete.name),
      /** The reason why it can't be done now, and what to do first. */
      blocked: whyNotErased(db, athlete),
      /** True if an athlete added by mistake can simply be removed. */
      removable: whyNotRemoved(db, athlete) === null,
      backups: (desk.kind === "own" ? await desk.backups?.beforeForgetting() : undefined) ?? noBackups,
    };
  });

/** What becomes of backups: made again without the person, deleted, out of reach; and of stores that were set aside. */
const noBackups = { anew: 0, gone: 0, setAside: 0, away: false };

/**
 * Erases an athlete for good. The same id again gets the first answer, even when the athlete's id is gone, and retries
 * a rewrite of the file that is still due.
 */
export const erase = allow("organiser")
  .input(
    z.object({
      erasureId: z.uuid(),
      athleteId: z.int(),
      /** The name or the number, typed to confirm. */
      typed: z.string().max(200),
      by: initialsSchema,
    }),
  )
  .mutation(async ({ ctx: { desk }, input: { erasureId: id, athleteId, typed, by } }) => {
    const { db } = desk.store;
    // Whom a retry means is gone: their backups were seen to the first time.
    const known = erasureById(db, id) === undefined ? tracesOf(db, requireAthlete(db, athleteId)) : null;
    const erasure = { id, by, at: desk.now().toISOString() };
    if (known !== null) {
      if (desk.kind === "own") await desk.backups?.announce(id);
      desk.store.write(topics, (inside) => {
        const athlete = requireAthlete(inside, athleteId);
        requireMeant(athlete, typed);
        const why = whyNotErased(inside, athlete);
        if (why !== null) throw new Refusal("conflict", why);
        eraseAthlete(inside, athlete, erasure, namelessOf(inside, athlete, randomUUID));
      });
      forgetNames(desk.store);
      uploads.forget(desk);
    }
    const notWiped = wipe(desk);
    if (known !== null && desk.kind === "own") {
      const living = new Set(allAthletes(db).map((athlete) => athlete.id));
      // Those out of reach go when they are reached, and the first screen says so.
      await desk.backups?.forgetEarlier((store) => takeOutOf(store, known, living, erasure));
    }
    return { notWiped };
  });

/** Retries the rewrite of the file; answers with a sentence if it still has to be done. */
export const wipeAgain = allow("organiser").mutation(({ ctx: { desk } }) => ({ notWiped: wipe(desk) }));

/** Returns all erasures, newest first: when and by whom, never whom. */
export const erasures = allow("organiser").query(({ ctx: { desk } }) => allErasures(desk.store.db));

/** @throws Refusal `bad-input` when neither the name nor the number was typed. */
function requireMeant({ name, number }: Athlete, typed: string): void {
  const said = typed.trim();
  if (said !== "" && (said === number || fold(said) === fold(name))) return;
  throw new Refusal("bad-input", sentence("erase.typed", { name }));
}

/** Returns a refusal for an athlete in the middle of a heat, whose next tap must have somewhere to go. */
function whyNotErased(db: ReadableDb, { id, name }: Athlete): Sentence | null {
  const day = dayAtHand(db);
  if (day?.state !== "open") return null;
  const taken = takenLanes(db, day.id).find(
    ({ athleteId, heatId, lane }) => athleteId === id && hasBegun(db, heatId, lane),
  );
  return taken === undefined ? null : sentence(`test.${taken.test}.inHeat`, { name, lane: taken.lane });
}

/** True if a lane has begun: with its first tap at its own pace, otherwise with the heat. */
function hasBegun(db: ReadableDb, heatId: string, lane: number): boolean {
  const heat = heatById(db, heatId);
  if (heat?.state !== "running") return false;
  if (clockOf(heat.test) === "common") return true;
  return eventsOf(db, heatId).some((event) => event.lane === lane);
}

/** Rewrites the file if that is due; returns a sentence if it could not be done. */
function wipe({ store }: Desk): Sentence | null {
  if (!wipeIsDue(store.db)) return null;
  try {
    store.wipe();
    return null;
  } catch (error) {
    return sentence("erase.notWiped", { message: error instanceof Error ? error.message : String(error) });
  } finally {
    // Windows show which erasures are finished.
    store.write(["people"], () => {});
  }
}

/** By what somebody is found again in an earlier backup: every record that was made one with theirs, and every name. */
interface Traces {
  readonly ids: ReadonlySet<number>;
  readonly names: readonly string[];
  /** Whether results may stay without a name: as they agreed last. */
  readonly share: boolean;
}

/** Returns the traces of somebody before they are erased. They are kept nowhere. */
function tracesOf(db: ReadableDb, athlete: Athlete): Traces {
  const ids = new Set([athlete.id]);
  const names = new Map([[fold(athlete.name), athlete.name]]);
  for (const { place, before, after } of heldRows(db, athlete.id).step_row) {
    if (place !== "athlete") continue;
    for (const text of [before, after]) {
      if (text === null) continue;
      const { id, name } = JSON.parse(text) as { id: number; name: string };
      ids.add(id);
      names.set(fold(name), name);
    }
  }
  return { ids, names: [...names.values()], share: athlete.share };
}

/**
 * Takes somebody out of a store of before: everybody with one of their ids and names, and everybody of one of their names
 * who is nobody of now (`living`: the ids in the store of now). Returns false where it can't be told who they are in it,
 * or where only a note names them.
 */
function takeOutOf(store: Store, traces: Traces, living: ReadonlySet<number>, erasure: Erasure): boolean {
  const folded = new Set(traces.names.map(fold));
  const all = allAthletes(store.db);
  const isNamed = ({ name }: Athlete) => folded.has(fold(name));
  const meant = all.filter((each) => isNamed(each) && (traces.ids.has(each.id) || !living.has(each.id)));
  if (all.some((each) => traces.ids.has(each.id) && !isNamed(each))) return false;
  if (meant.length === 0) return !traces.names.some((name) => countMentions(store.db, 0, name) > 0);
  store.write(topics, (db) => {
    for (const [index, athlete] of meant.entries()) {
      const id = index === 0 ? erasure.id : randomUUID();
      const kept = traces.share ? namelessOf(db, athlete, randomUUID) : [];
      eraseAthlete(db, athlete, { ...erasure, id }, kept);
    }
  });
  // Another name of theirs may stand in a note about somebody else.
  return !traces.names.some((name) => !hasNamesake(all, meant, name) && countMentions(store.db, 0, name) > 0);
}

function hasNamesake(all: readonly Athlete[], meant: readonly Athlete[], name: string): boolean {
  return all.some((each) => !meant.includes(each) && fold(each.name) === fold(name));
}
