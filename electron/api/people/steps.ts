import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { topics } from "../../store/connection/store.ts";
import { identityKinds, importKinds } from "../../store/steps/kinds.ts";
import type { Row, StepRow } from "../../store/steps/rows.ts";
import { allSteps, type KeptStep, rowsOfStep, stepById } from "../../store/steps/steps.ts";
import { undoStep, whyNotUndone } from "../../store/steps/undo-step.ts";
import { leagues } from "../../store/tables/athletes.ts";
import { initialsSchema } from "../door/said.ts";
import type { SaidPerson } from "../door/shapes.ts";
import { allow } from "../door/trpc.ts";
import { say } from "../door/words.ts";
import { forgetNames } from "./search.ts";

/** Most steps in the answer, the newest of all. */
const most = 100;

/** Returns the newest steps: who became one with whom, who was changed, which leagues were, or the imports. */
export const steps = allow("organiser")
  .input(z.object({ of: z.enum(["identity", "imports"]) }))
  .query(({ ctx: { desk }, input }) => {
    const kinds: readonly string[] = input.of === "identity" ? identityKinds : importKinds;
    const { db } = desk.store;
    const wanted = allSteps(db).filter(({ kind }) => kinds.includes(kind));
    return wanted.slice(0, most).map((step) => stepView(db, step));
  });

/** Undoes a step or an import as a whole. The same again changes nothing. @throws Refusal where something depends on it */
export const undo = allow("organiser")
  .input(z.object({ stepId: z.uuid(), by: initialsSchema }))
  .mutation(({ ctx: { desk }, input: { stepId, by } }) => {
    desk.store.write(topics, (db) => {
      const step = stepById(db, stepId);
      if (step === undefined) throw new Refusal("not-found", sentence("steps.unknown"));
      if (step.undone !== null) return;
      const reason = say(sentence("steps.importUndone"), desk.language);
      undoStep(db, step, { by, at: desk.now().toISOString(), reason });
    });
    forgetNames(desk.store);
  });

function stepView(db: ReadableDb, step: KeptStep) {
  const { id, kind, at, by, file, counts, undone } = step;
  const isImport = (importKinds as readonly string[]).includes(kind);
  return {
    ...{ id, kind, at, by, file, counts: { ...counts }, undone },
    /** Why it can't be undone; null where it can be. */
    blocked: undone === null ? whyNotUndone(db, step) : null,
    /** Who was what before and after, as far as it is still held; of imports nobody is named. */
    changes: isImport ? [] : changesOf(db, kind, rowsOfStep(db, step.seq)),
  };
}

/** Of people each one is told, of leagues what became of their names. */
function changesOf(db: ReadableDb, kind: KeptStep["kind"], rows: readonly StepRow[]) {
  const names = new Map(leagues(db).map(({ id, name }) => [id, name]));
  for (const { place, before } of rows) {
    if (place !== "league" || before === null || names.has(Number(before.id))) continue;
    names.set(Number(before.id), String(before.name));
  }
  const told = rows.filter(({ place }) => place === (kind === "league-renamed" ? "league" : "athlete"));
  const changes = told.map(({ before, after }) => ({
    before: factsOf(before, names),
    after: factsOf(after, names),
  }));
  return kind === "leagues-joined" ? changes.slice(0, 1) : changes;
}

function factsOf(row: Row | null, leagueNames: ReadonlyMap<number, string>): SaidPerson | null {
  if (row === null) return null;
  if (row.league_id === undefined) {
    return { name: "", number: "", league: String(row.name), birthYear: null };
  }
  const { name, number, birth_year: birthYear } = row;
  const league = leagueNames.get(Number(row.league_id)) ?? "";
  return {
    ...{ name: String(name), number: String(number), league },
    birthYear: typeof birthYear === "number" ? birthYear : null,
  };
}
