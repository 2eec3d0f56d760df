import { setImmediate } from "node:timers/promises";
import { octetInputParser } from "@trpc/server/http";
import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import type { Sentence } from "../../domain/words.ts";
import { refuseTooBig } from "../../sheets/decode.ts";
import type { Desk } from "../door/desk.ts";
import { takenSchema } from "../door/sheet-shapes.ts";
import { allow, router } from "../door/trpc.ts";
import { readUpload } from "../door/uploads.ts";
import { choicesOf, choicesShape } from "./choices.ts";
import { exampleNames, exampleOf } from "./example.ts";
import { rememberedMapping } from "./forms.ts";
import { keptBackSheet } from "./kept-back-sheet.ts";
import { previewOf, takenOf } from "./preview.ts";
import { readSteps } from "./read.ts";
import { planInTurns, readingAt, takeSheet } from "./sheet.ts";
import { uploads } from "./uploads.ts";

const which = z.object({ uploadId: z.uuid(), ...choicesShape });

type Stage =
  | { readonly stage: "reading"; readonly done: number; readonly total: number }
  | { readonly stage: "preview"; readonly preview: ReturnType<typeof previewOf> }
  | { readonly stage: "refused"; readonly sentence: Sentence };

/** Imports the leagues' sheets: upload one, look at its changes, import it. */
export const intake = router({
  /** Uploads a sheet as it is (bytes, not JSON); one over the limit is refused before it is read to its end. */
  upload: allow("organiser")
    .input(octetInputParser)
    .mutation(async ({ ctx: { desk }, input }) => {
      const bytes = await readUpload(input, refuseTooBig);
      return { uploadId: uploads.keep(desk, { bytes, keptBack: null }) };
    }),

  /** Reads a sheet, reporting progress and finally its changes, or why it can't be read. Changes nothing. */
  read: allow("organiser")
    .input(which.extend({ recall: z.boolean().default(false) }))
    .subscription(async function* ({ ctx: { desk }, input }) {
      yield* stages(desk, input);
    }),

  /** Imports all good rows, or none. The same sheet again changes nothing. */
  take: allow("organiser")
    .input(which.required({ kind: true }).extend({ fileName: z.string().max(1000).default("") }))
    .output(takenSchema)
    .mutation(async ({ ctx: { desk }, input: { uploadId, kind, fileName, ...said } }) => {
      const upload = uploads.find(desk, uploadId);
      const file = fileName.replace(/\s+/g, " ").trim().slice(0, 120);
      const taken = await takeSheet(desk, kind, upload.bytes, choicesOf(kind, said), file);
      upload.keptBack = taken;
      return takenOf(taken);
    }),

  /** Returns the rows not imported at the last reading or import, as a sheet with line and reason. */
  keptBackSheet: allow("organiser")
    .input(which.pick({ uploadId: true }))
    .query(({ ctx: { desk }, input }) => {
      const { keptBack } = uploads.find(desk, input.uploadId);
      const planned = keptBack ?? {
        kind: "roster" as const,
        headers: [],
        keptBack: [],
        separator: "," as const,
      };
      return { name: `kept-back-${planned.kind}.csv`, text: keptBackSheet(planned, desk.language) };
    }),

  /** Returns one of the sheets that leagues send every day, with invented rows, to look at or to fill in. */
  example: allow("organiser")
    .input(z.object({ name: z.enum(exampleNames) }))
    .query(({ input }) => exampleOf(input.name)),
});

function recallAt({ store }: Desk) {
  return (kind: string, headers: readonly string[]) => rememberedMapping(store.db, kind, headers);
}

async function* stages(
  desk: Desk,
  { uploadId, kind, recall, ...said }: z.infer<typeof which> & { recall: boolean },
): AsyncGenerator<Stage> {
  try {
    const upload = uploads.find(desk, uploadId);
    const reading = readingAt(desk, choicesOf(kind ?? null, said));
    const steps = readSteps(upload.bytes, recall ? { ...reading, recall: recallAt(desk) } : reading);
    for (;;) {
      const step = await steps.next();
      if (!step.done) {
        yield { stage: "reading", ...step.value };
        await setImmediate();
        continue;
      }
      const planned = await planInTurns(desk.store.db, step.value, desk.now().toISOString());
      upload.keptBack = planned;
      yield { stage: "preview", preview: previewOf(step.value, planned) };
      return;
    }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    yield { stage: "refused", sentence: error.sentence };
  }
}
