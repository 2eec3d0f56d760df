import { z } from "zod";
import type { Contents } from "../../bundle/contents.ts";
import { bundleKinds, ks, leastK } from "../../domain/privacy/rule.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { allDays, type Day, dayAtHand, dayById } from "../../store/tables/days.ts";
import { allExports, type Export, noteExport, noteUnsaved } from "../../store/tables/exports.ts";
import { allow, router } from "../door/trpc.ts";
import { prepare } from "./prepare.ts";
import { logOf, previewOf } from "./views.ts";

/** Returns the requested day; without an id the current day, else the newest one. */
function dayFor(db: ReadableDb, dayId: number | undefined): Day | undefined {
  if (dayId === undefined) return dayAtHand(db) ?? allDays(db)[0];
  const day = dayById(db, dayId);
  if (day === undefined) throw new Refusal("not-found", sentence("bundle.noDay"));
  return day;
}

/** The chosen kind and k; by default unlinked marks for use within the sport. */
const wish = z.object({
  kind: z.enum(bundleKinds).default("marks"),
  k: z.literal(ks).default(leastK),
});

/** The bundle that leaves the hall, only ever on the organiser's decision. */
export const bundle = router({
  /** Returns exactly the rows and files to be shared; null while there is no day. Writes nothing. */
  preview: allow("organiser")
    .input(wish.extend({ dayId: z.int().optional() }).prefault({}))
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      const day = dayFor(db, input.dayId);
      if (day === undefined) return null;
      return previewOf(day, prepare(desk, db, day, input), exportsOf(db, day));
    }),

  /** Returns the previewed file and logs it as shared, in one step. Doing it twice logs it once. */
  write: allow("organiser")
    .input(wish.extend({ dayId: z.int(), previewSha256: z.string().regex(/^[0-9a-f]{64}$/) }))
    .output(
      z.object({
        ...{ name: z.string(), bytes: z.base64(), sha256: z.string() },
        /** The new log entry's id; null when this very file was logged before. */
        logged: z.int().nullable(),
      }),
    )
    .mutation(({ ctx: { desk }, input }) => {
      return desk.store.write(["day"], (db) => {
        const day = dayFor(db, input.dayId);
        if (day === undefined) throw new Refusal("not-found", sentence("bundle.noDay"));
        const { contents, file } = prepare(desk, db, day, input);
        if (file.sha256 !== input.previewSha256) throw new Refusal("conflict", sentence("bundle.changed"));
        if (contents.rows.length === 0) throw new Refusal("unavailable", sentence("bundle.empty"));
        requireFirst(exportsOf(db, day), file.sha256);
        requireHidden(contents);
        const { name, sha256 } = file;
        const logged = noteExport(db, { dayId: day.id, at: desk.now().toISOString(), k: input.k, sha256 });
        return { name, bytes: Buffer.from(file.bytes).toString("base64"), sha256, logged };
      });
    }),

  /** Notes that the file of this entry was saved nowhere: it stays in the log and does not count as shared. */
  notSaved: allow("organiser")
    .input(z.object({ logged: z.int() }))
    .mutation(({ ctx: { desk }, input }) => {
      desk.store.write(["day"], (db) => {
        if (!allExports(db).some(({ id }) => id === input.logged)) {
          throw new Refusal("not-found", sentence("bundle.noEntry"));
        }
        noteUnsaved(db, input.logged, desk.now().toISOString());
      });
    }),

  /** Returns all shared bundles, newest first; never a row of them. */
  log: allow("organiser").query(({ ctx: { desk } }) =>
    logOf(allExports(desk.store.db), allDays(desk.store.db)),
  ),
});

/** Returns the shared bundles of a day. */
function exportsOf(db: ReadableDb, day: Day) {
  return allExports(db).filter(({ dayId, saved }) => dayId === day.id && saved);
}

/** The largest allowed share of bibs that a neighbour matches likelier than one in k: none. */
const exposedLimit = 0;

/**
 * Refuses a bundle in which a neighbour finds somebody. The rule should never make one: this is a second check of the
 * finished bundle by other code.
 * @throws Refusal `unavailable`
 */
export function requireHidden({
  attack,
  subtraction,
  strictness: { k },
  likeness,
}: Pick<Contents, "attack" | "subtraction" | "strictness" | "likeness">): void {
  const found = Math.max(attack.exposed, subtraction.people);
  const share = attack.bibs === 0 ? 0 : found / attack.bibs;
  if (share > exposedLimit || (likeness.k !== null && likeness.k < k)) {
    throw new Refusal(
      "unavailable",
      sentence("bundle.recognisable", { count: found, percent: Math.round(share * 100) }),
    );
  }
}

/**
 * Refuses a second bundle of a day: compared with the first, the rows that differ would stand alone. The same file may
 * be shared again.
 * @throws Refusal `conflict`
 */
export function requireFirst(earlier: readonly Export[], sha256: string): void {
  if (earlier.length > 0 && !earlier.some((entry) => entry.sha256 === sha256)) {
    throw new Refusal("conflict", sentence("bundle.second"));
  }
}
