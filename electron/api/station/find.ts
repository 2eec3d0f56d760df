import { z } from "zod";
import { waitFor } from "../../domain/queue/queue.ts";
import { gain } from "../../domain/statistics/change.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type EarlierMark, earlierOf } from "../../store/reads/earlier-marks.ts";
import type { Present } from "../../store/reads/present.ts";
import { type KeptAttempt, lastVariant, standingAttempts } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { attemptSchema, stationPersonSchema, testSchema, toldSchema, writtenSchema } from "../door/shapes.ts";
import { attemptView, stationPersonOf, toldOf } from "../marks/attempts.ts";
import { tellMarks } from "../marks/marks.ts";
import { runnersOf } from "./runners.ts";
import { firstBefore, requireBib, requireTesting } from "./who.ts";

const earlierSchema = z.object({ date: z.string(), value: z.number(), written: writtenSchema }).nullable();

export const foundSchema = z.object({
  who: stationPersonSchema,
  /** Standing attempts of this test today. */
  standing: z.array(attemptSchema),
  /** Number of standing attempts in each slot; a missing slot is empty. */
  taken: z.record(z.string(), z.int()),
  /** The athlete's last variant of the test; the plain one if there is none. */
  variant: z.string(),
  /** Today's mark and the comparable ones before, for each variant. */
  history: z.array(
    z.object({ variant: z.string(), today: toldSchema.nullable(), last: earlierSchema, best: earlierSchema }),
  ),
  /** A test that comes before this one and is neither done nor left out; it holds up calls and heats, not what is keyed. */
  stillBefore: testSchema.nullable(),
  readyAt: z.string(),
});

export type Found = z.infer<typeof foundSchema>;

/**
 * Finds the athlete by a typed bib, with all that paper entry shows.
 * @throws Refusal when no bib is typed, nobody wears it, or its athlete takes no part in this test.
 */
export function find(
  db: ReadableDb,
  day: Day,
  { test, bib, lengths }: { readonly test: TestCode; readonly bib: string; readonly lengths: LengthUnit },
  now: string,
): Found {
  const who = requireBib(db, day, bib);
  requireTesting(db, day, who, test);
  const standing = standingAttempts(db, day.id, who.athleteId, test);
  const person = stationPersonOf(who);
  return {
    who: person,
    standing: standing.map((attempt) => attemptView(attempt, person)),
    taken: countBySlot(standing),
    variant: lastVariant(db, who.athleteId, test) ?? protocolOf(test).variants[0] ?? "",
    history: historyOf(db, day, who.athleteId, test, lengths),
    stillBefore: firstBefore(db, day, who.athleteId, test),
    readyAt: readyAt(db, day, who, test, now),
  };
}

function countBySlot(standing: readonly KeptAttempt[]): Record<string, number> {
  const taken: Record<string, number> = {};
  for (const { slot } of standing) taken[slot] = (taken[slot] ?? 0) + 1;
  return taken;
}

function historyOf(db: ReadableDb, day: Day, athleteId: number, test: TestCode, lengths: LengthUnit) {
  const protocol = protocolOf(test);
  const parameters = parametersOf(db, day.id, test);
  const today = tellMarks(db, day, athleteId).filter((mark) => mark.test === test);
  function write(mark: EarlierMark | undefined) {
    if (mark === undefined) return null;
    return { date: mark.date, value: mark.value, written: protocol.write(mark.value, lengths) };
  }
  return protocol.variants.map((variant) => {
    const name = fingerprint(test, variant, parameters);
    const comparable = earlierOf(db, day, { athleteId, test, variant, fingerprint: name });
    const told = today.find((mark) => mark.variant === variant);
    const best = comparable.toSorted((a, b) => gain(protocol.better, a.value, b.value)).at(0);
    return {
      variant,
      today: told === undefined ? null : toldOf(told, lengths),
      last: write(comparable.at(-1)),
      best: write(best),
    };
  });
}

function readyAt(db: ReadableDb, day: Day, who: Present, test: TestCode, now: string): string {
  const runner = runnersOf(db, day, now).find(({ athleteId }) => athleteId === who.athleteId);
  const { lastDone = new Map(), lastTimed = lastDone } = runner ?? {};
  return waitFor(test, { checkedIn: who.since, lastDone, lastTimed }, day.restMinutes).readyAt;
}
