import { z } from "zod";
import { earliestBirthYear, latestBirthYear } from "../../domain/people/identity.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import { initialsSchema } from "../door/said.ts";

export const athleteInput = z.object({ athleteId: z.int() });

/** The outcome that the table sends once the questions are answered; never an answer. */
const outcome = z.object({
  /** null: the next free one, or the one the athlete already has. */
  bib: z.number().nullable(),
  /** Tests that the athlete skips today; all five: does not test. */
  leaveOut: z.array(z.enum(testCodes)).max(testCodes.length),
  /** The answers to both consents; null only for an athlete who does not test and was not asked. */
  board: z.enum(["name", "bib", "hidden"]).nullable(),
  share: z.boolean().nullable(),
  guardianConsent: z.boolean(),
  /** Left out or null: unchanged. */
  birthYear: z.int().nullish(),
  category: z.enum(["women", "men", "open"]).nullish(),
  /** Initials of the volunteer at the table. */
  by: initialsSchema,
});

export type CheckInOutcome = z.infer<typeof outcome>;

export const admitInput = athleteInput.extend(outcome.shape);

export const walkUpInput = outcome.extend({
  league: z.string().max(200),
  name: z.string().max(200),
  number: z.string().max(20),
  birthYear: z.int().nullable(),
});

/** The facts before a check-in, restored when it is undone. */
export const undoInput = athleteInput.extend({
  before: z
    .object({
      board: z.enum(["name", "bib", "hidden"]),
      share: z.boolean(),
      guardianConsent: z.boolean(),
      asked: z.boolean(),
      /** Bounded as in the store: it may have been known long before this day. */
      birthYear: z.int().min(earliestBirthYear).max(latestBirthYear).nullable(),
      category: z.enum(["women", "men", "open"]).nullable(),
    })
    .nullish(),
});
