import { z } from "zod";
import { bundleKinds, ks, leastK } from "../../domain/privacy/rule.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { allDays, type Day, dayAtHand, dayById } from "../../store/tables/days.ts";
import { allExports, noteExport, noteUnsaved } from "../../store/tables/exports.ts";
import { allow, router } from "../door/trpc.ts";
import { requireFirst, requireHidden } from "./may-leave.ts";
import { prepare } from "./prepare.ts";
import { logOf, logView, previewOf, previewView } from "./views.ts";

/** The day asked for; without an id the day at hand, else the newest one held. */
function dayFor(db: ReadableDb, dayId: number | undefined): Day | undefined {
  if (dayId === undefined) return dayAtHand(db) ?? allDays(db)[0];
  const day = dayById(db, dayId);
  if (day === undefined) throw new Refusal("not-found", sentence("bundle.noDay"));
  return day;
}

/** Unlinked marks for use within the sport, unless something else is chosen. */
const wish = z.object({
  kind: z.enum(bundleKinds).default("marks"),
  k: z.literal(ks).default(leastK),
});

/** What leaves the room, only ever by the organiser's word. */
export const bundle = router({
  /** Exactly what would leave; null while there is no day. Writes nothing. */
  preview: allow("organiser")
    .input(wish.extend({ dayId: z.int().optional() }).prefault({}))
    .output(previewView.nullable())
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      const day = dayFor(db, input.dayId);
      if (day === undefined) return null;
      return previewOf(day, prepare(desk, db, day, input), exportsOf(db, day));
    }),

  /** Hands out the file that was looked at and notes that it left, in one step. Doing it twice is noted once. */
  write: allow("organiser")
    .input(wish.extend({ dayId: z.int(), previewSha256: z.string().regex(/^[0-9a-f]{64}$/) }))
    .output(
      z.object({
        ...{ name: z.string(), bytes: z.base64(), sha256: z.string() },
        /** The new entry of the log; null when this very file was noted before. */
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

  /** That the file handed out under this entry was saved nowhere: it stays in the log and does not count as having left. */
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

  /** What left so far, newest first; never a row of it. */
  log: allow("organiser")
    .output(logView)
    .query(({ ctx: { desk } }) => logOf(allExports(desk.store.db), allDays(desk.store.db))),
});

/** The bundles of a day that have left. */
function exportsOf(db: ReadableDb, day: Day) {
  return allExports(db).filter(({ dayId, saved }) => dayId === day.id && saved);
}
