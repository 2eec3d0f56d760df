import { z } from "zod";
import { studyKinds } from "../../domain/study/shape.ts";
import { identityKinds, importKinds } from "../../store/steps/kinds.ts";
import { entrantStates } from "../../store/tables/entrants.ts";
import { markSchema, testSchema } from "../door/shapes.ts";

/**
 * The file with all data about one athlete, as they get it (electron/store/erasure/ERASURE.md explains each key). Keys
 * are those of the sheets where they exist. An existing key stays, and new ones may be added; a change that breaks a
 * reader raises `version`.
 */
const entered = { id: z.string(), test: testSchema, at: z.string() };

const attempt = z.object({
  ...entered,
  order: z.int(),
  variant: z.string(),
  slot: z.string(),
  seen: z.unknown(),
  entered_by: z.string(),
  source: z.enum(["station", "sheet", "heat"]),
  /** When it was done; null for paper without a time. */
  performed_at: z.string().nullable(),
  note: z.string(),
  /** Id of the own attempt that it corrects. */
  replaces: z.string().nullable(),
  /** The own heat that entered it (or what it corrects), and the lane's result; null for an attempt from paper. */
  heat: z.string().nullable(),
  result: z.string().nullable(),
  void: z.object({ reason: z.string(), by: z.string(), at: z.string() }).nullable(),
});

const mark = z.object({
  test: testSchema,
  variant: z.string(),
  /** The fingerprint, which must be equal for two marks to compare. */
  protocol: z.string(),
  state: z.enum(["complete", "incomplete", "unfinished"]),
  value: z.number().nullable(),
  unit: z.enum(["reps", "landings", "cm", "s"]),
  /** The mark in the program's own grains, or its missing part. */
  detail: markSchema,
  order: z.int(),
  rules: z.int(),
  /** Among the tests of the day, from 1, and the minutes since the one before; null where not known. */
  position: z.int().nullable(),
  rest_minutes: z.int().nullable(),
});

const heat = z.object({
  id: z.string(),
  test: testSchema,
  gathered_at: z.string(),
  started_at: z.string().nullable(),
  ended_at: z.string().nullable(),
  ending: z.enum(["done", "called-off"]).nullable(),
  reason: z.string(),
  lane: z.int(),
  variant: z.string(),
  taps: z.array(
    z.object({
      id: z.string(),
      order: z.int(),
      kind: z.string(),
      at_ms: z.int(),
      detail: z.unknown(),
      tapped_by: z.string(),
      at: z.string(),
    }),
  ),
});

const day = z.object({
  date: z.string(),
  title: z.string(),
  state: z.enum(["planned", "open", "closed"]),
  entry: z.object({ state: z.enum(entrantStates), bib: z.int().nullable(), since: z.string() }),
  left_out: z.array(
    z.object({
      test: testSchema,
      kind: z.enum(["readiness", "skip"]),
      reason: z.string(),
      decided_by: z.string(),
      at: z.string(),
    }),
  ),
  calls: z.array(z.object({ test: testSchema, at: z.string() })),
  absences: z.array(z.object({ ...entered, noted_by: z.string() })),
  attempts: z.array(attempt),
  marks: z.array(mark),
  heats: z.array(heat),
});

const pastMark = z.object({
  date: z.string(),
  test: testSchema,
  variant: z.string(),
  protocol: z.string(),
  value: z.number(),
  unit: z.enum(["reps", "landings", "cm", "s"]),
});

const changedRow = z.record(z.string(), z.union([z.string(), z.number(), z.null()]));

export const heldSchema = z.object({
  format: z.literal("tapeline-held"),
  version: z.literal(1),
  made_at: z.string(),
  /** True for the invented people of the demo. */
  invented: z.boolean(),
  person: z.object({
    id: z.int(),
    league: z.string(),
    name: z.string(),
    number: z.string(),
    birth_year: z.int().nullable(),
    category: z.enum(["women", "men", "open"]).nullable(),
  }),
  consents: z.object({
    board: z.enum(["name", "bib", "hidden"]),
    share: z.boolean(),
    guardian_consent: z.boolean(),
    asked_at_the_table: z.boolean(),
  }),
  days: z.array(day),
  past_marks: z.array(pastMark),
  /** Those that were removed or corrected, with who did it and why. */
  past_removed: z.array(
    pastMark.extend({
      instead: z.number().nullable(),
      reason: z.string(),
      voided_by: z.string(),
      at: z.string(),
    }),
  ),
  /** Readings for measuring studies, in order of entry; null takes away the one before. */
  study_readings: z.array(
    z.object({
      ...entered,
      variant: z.string(),
      kind: z.enum(studyKinds),
      /** Initials of who read; empty for a visit. */
      judge: z.string(),
      value: z.number().nullable(),
      unit: z.enum(["reps", "landings", "cm", "s"]),
      source: z.enum(["sheet", "keyed"]),
      entered_by: z.string(),
      reason: z.string(),
    }),
  ),
  /** What imports, corrections and steps that made two records one changed, row by row; null where there was no row. */
  changes: z.array(
    z.object({
      kind: z.enum([...identityKinds, ...importKinds]),
      at: z.string(),
      by: z.string(),
      table: z.string(),
      before: changedRow.nullable(),
      after: changedRow.nullable(),
    }),
  ),
});

export type Held = z.infer<typeof heldSchema>;
export type HeldDay = z.infer<typeof day>;
