import { z } from "zod";
import { earliestBirthYear, latestBirthYear } from "../../domain/people/identity.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import { initialsSchema } from "../door/said.ts";

export const athleteInput = z.object({ athleteId: z.int() });

/** What the table sends once the questions are answered: the outcome alone, never an answer. */
const outcome = z.object({
  /** null: the next free one, or the one that the athlete has already. */
  bib: z.number().nullable(),
  /** Tests that the athlete leaves out today; all five: does not test. */
  leaveOut: z.array(z.enum(testCodes)).max(testCodes.length),
  /** What the athlete answered to both; null only for who does not test and was not asked. */
  board: z.enum(["name", "bib", "hidden"]).nullable(),
  share: z.boolean().nullable(),
  guardianConsent: z.boolean(),
  /** Left out or null: stays as it is known. */
  birthYear: z.int().nullish(),
  category: z.enum(["women", "men", "open"]).nullish(),
  /** Initials of who checks in. */
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

/** What was known before a check-in, to be put back when it is undone. */
export const undoInput = athleteInput.extend({
  before: z
    .object({
      board: z.enum(["name", "bib", "hidden"]),
      share: z.boolean(),
      guardianConsent: z.boolean(),
      asked: z.boolean(),
      /** As the store bounds it: it may have been known long before this day. */
      birthYear: z.int().min(earliestBirthYear).max(latestBirthYear).nullable(),
      category: z.enum(["women", "men", "open"]).nullable(),
    })
    .nullish(),
});
