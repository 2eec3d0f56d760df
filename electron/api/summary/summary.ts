import { z } from "zod";
import { zipOf } from "../../bundle/zip.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { allow, router } from "../door/trpc.ts";
import { baseName, filesOf } from "./sheets/files.ts";
import { summaryOf } from "./view.ts";
import { choose, requireChosen, whichSummarySchema } from "./which.ts";

const organiser = allow("organiser");

/** A day summed up, whole or for one league. It holds names: for the organiser, who hands leagues their own. */
export const summary = router({
  /** Null while there is no day. */
  get: organiser.input(whichSummarySchema).query(({ ctx: { desk }, input }) => {
    const chosen = choose(desk.store.db, input);
    return chosen === null ? null : summaryOf(desk.store.db, chosen);
  }),

  /** Returns the names of the files that can be saved, and the number of rows of each sheet. */
  sheets: organiser.input(whichSummarySchema).query(({ ctx: { desk }, input }) => {
    const files = filesOf(desk.store.db, requireChosen(desk.store.db, input), desk.kind === "demo");
    return files.map(({ name, rows }) => ({ name, rows }));
  }),

  /** One of the files, under a name that says of what it is. */
  sheet: organiser
    .input(whichSummarySchema.extend({ name: z.string().max(60) }))
    .query(({ ctx: { desk }, input }) => {
      const chosen = requireChosen(desk.store.db, input);
      const demo = desk.kind === "demo";
      const file = filesOf(desk.store.db, chosen, demo).find(({ name }) => name === input.name);
      if (file === undefined) throw new Refusal("not-found", sentence("summary.noSheet"));
      return { name: `${baseName(chosen, demo)}-${file.name}`, text: file.text };
    }),

  /** All of the files in one zip. */
  zip: organiser.input(whichSummarySchema).query(({ ctx: { desk }, input }) => {
    const chosen = requireChosen(desk.store.db, input);
    const demo = desk.kind === "demo";
    const bytes = zipOf(filesOf(desk.store.db, chosen, demo));
    return { name: `${baseName(chosen, demo)}.zip`, bytes: Buffer.from(bytes).toString("base64") };
  }),
});
