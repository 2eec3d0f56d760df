import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { protocolOf, type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { marksOfDay, rebuildMarks } from "../../electron/store/tables/marks.ts";
import { examplesOf } from "../unit/tests/every-test.ts";
import { bringTo, entry, type StationDay, stationDay } from "./station-day.ts";

type Told = Awaited<ReturnType<StationDay["station"]["enter"]>>;

/** Enters what was seen, whatever it is; a refusal (impossible, taken, not their turn) is a fine outcome too. */
async function tryToEnter(day: StationDay, code: TestCode, seen: unknown, variant: string, bib = 1) {
  const one = entry(day.idOf(bib), code, seen, { variant, sure: true });
  const told: Told | null = await day.station.enter(one).catch(() => null);
  return { told, attemptId: told === null ? null : (one.attempts[0]?.id ?? "") };
}

const one = fc
  .constantFrom(...testCodes)
  .chain((code) => fc.record({ code: fc.constant(code), seen: examplesOf[code].attempts }));

test("void then enter again equals enter", async () => {
  await fc.assert(
    fc.asyncProperty(one, async ({ code, seen }) => {
      const day = await stationDay();
      await bringTo(day, 1, code);
      const variant = protocolOf(code).variants[0] ?? "";
      const first = await tryToEnter(day, code, seen, variant);
      if (first.attemptId !== null) {
        await day.station.void({ attemptId: first.attemptId, reason: "Slip", by: "QA" });
        const again = await tryToEnter(day, code, seen, variant);
        expect(again.told).toEqual(first.told);
      }
      day.desk.close();
    }),
    { numRuns: 60 },
  );
});

const step = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...testCodes).chain(entering) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("void" as const), which: fc.nat(20) }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant("skip" as const), code: fc.constantFrom(...testCodes) }),
  },
);

function entering(code: TestCode) {
  const variant = fc.constantFrom(...protocolOf(code).variants);
  return fc.record({
    kind: fc.constant("enter" as const),
    code: fc.constant(code),
    seen: fc.oneof(
      { weight: 4, arbitrary: examplesOf[code].believable },
      { weight: 1, arbitrary: examplesOf[code].attempts },
    ),
    variant,
    bib: fc.integer({ min: 1, max: 2 }),
    correcting: fc.option(fc.nat(2)),
  });
}

test("marks after any sequence of entries, corrections, voids and skips are those rebuilt from attempts", async () => {
  let kept = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 20, maxLength: 40 }), async (steps) => {
      const day = await stationDay();
      await bringTo(day, 1, "endurance");
      for (const each of steps) await take(day, each);
      const { db } = day.desk.store;
      const before = marksOfDay(db, day.dayId);
      day.desk.store.write([], rebuildMarks);
      expect(marksOfDay(db, day.dayId)).toEqual(before);
      kept += attemptsOfDay(db, day.dayId).length;
      day.desk.close();
    }),
    { numRuns: 60 },
  );
  // Most are refused for good reasons, but a run in which nothing got in would show nothing.
  expect(kept).toBeGreaterThan(450);
});

type Step = typeof step extends fc.Arbitrary<infer One> ? One : never;

async function take(day: StationDay, each: Step): Promise<void> {
  const attempts = attemptsOfDay(day.desk.store.db, day.dayId);
  const idAt = (which: number, code: TestCode | null = null) => {
    const choice = attempts.filter((attempt) => code === null || attempt.test === code).reverse();
    return choice[which % Math.max(1, choice.length)]?.id ?? randomUUID();
  };
  const calm = () => {};
  switch (each.kind) {
    case "enter": {
      const { code, seen, variant, bib, correcting } = each;
      const replaces =
        correcting === null ? {} : { replaces: { attemptId: idAt(correcting, code), reason: "Slip" } };
      await day.station
        .enter(entry(day.idOf(bib), code, seen, { variant, sure: true, ...replaces }))
        .catch(calm);
      break;
    }
    case "void":
      await day.station.void({ attemptId: idAt(each.which), reason: "Slip", by: "QA" }).catch(calm);
      break;
    case "skip":
      await day.organiser
        .skip({ athleteId: day.idOf(2), test: each.code, reason: "Sore", by: "OR" })
        .catch(calm);
      break;
  }
}
