import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { Database } from "../../store/database.ts";
import { allDays, type Day, dayAtHand, dayById } from "../../store/days.ts";
import { allExports, noteExport } from "../../store/exports.ts";
import { allow, router } from "../trpc.ts";
import { markAsLeft, prepare } from "./prepare.ts";
import { logOf, logView, previewOf, previewView } from "./views.ts";

/** The day asked for; without an id the day at hand, else the newest one held. */
function dayFor(db: Database, dayId: number | undefined): Day | undefined {
  if (dayId === undefined) return dayAtHand(db) ?? allDays(db)[0];
  const day = dayById(db, dayId);
  if (day === undefined) throw new Refusal("not-found", sentence("bundle.noDay"));
  return day;
}

/** What leaves the room, only ever by the organiser's word. */
export const bundle = router({
  /** Exactly what would leave; null while there is no day. Writes nothing. */
  preview: allow("organiser")
    .input(z.object({ dayId: z.int().optional() }).optional())
    .output(previewView.nullable())
    .query(({ ctx: { desk }, input }) => {
      const day = dayFor(desk.store.db, input?.dayId);
      return day === undefined ? null : previewOf(day, prepare(desk, desk.store.db, day));
    }),

  /** Hands out the file that was looked at and notes that it left, in one step. Doing it twice is noted once. */
  write: allow("organiser")
    .input(z.object({ dayId: z.int(), previewSha256: z.string().regex(/^[0-9a-f]{64}$/) }))
    .output(z.object({ name: z.string(), bytes: z.base64(), sha256: z.string() }))
    .mutation(({ ctx: { desk }, input }) => {
      const file = desk.store.write(["day"], (db) => {
        const day = dayFor(db, input.dayId);
        if (day === undefined) throw new Refusal("not-found", sentence("bundle.noDay"));
        const { contents, file } = prepare(desk, db, day);
        if (file.sha256 !== input.previewSha256) throw new Refusal("conflict", sentence("bundle.changed"));
        if (contents.rows.length === 0) throw new Refusal("unavailable", sentence("bundle.empty"));
        noteExport(db, { dayId: day.id, at: desk.now().toISOString(), k: contents.k, sha256: file.sha256 });
        return file;
      });
      markAsLeft(desk, input.dayId, file.sha256);
      return { name: file.name, bytes: Buffer.from(file.bytes).toString("base64"), sha256: file.sha256 };
    }),

  /** What left so far, newest first; never a row of it. */
  log: allow("organiser")
    .output(logView)
    .query(({ ctx: { desk } }) => logOf(allExports(desk.store.db), allDays(desk.store.db))),
});
