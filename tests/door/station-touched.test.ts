import type { Statement } from "better-sqlite3";
import fc from "fast-check";
import { expect, onTestFinished, test } from "vitest";
import { protocolOf, type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { connectionOf } from "../store/connection.ts";
import { examplesOf } from "../unit/tests/every-test.ts";
import { boardDay } from "./board-day.ts";
import { crowd } from "./crowd.ts";
import type { TestDesk } from "./desk.ts";
import { entry, reps, type StationDay, stationDay } from "./station-day.ts";

/** Which stations an entry touches, and what reading them again costs where many devices look at them. */

/** What every station shows: keyed and live. */
async function seenAtStations(day: Pick<StationDay, "as">): Promise<Map<TestCode, string>> {
  const { station, heat } = day.as("organiser");
  const views = testCodes.map(async (code) => {
    const seen = [await station.view({ test: code }), await heat.view({ test: code })];
    return [code, JSON.stringify(seen)] as const;
  });
  return new Map(await Promise.all(views));
}

/** The tests that the feed named for each change so far; undefined: all. */
function hearTests({ desk }: StationDay): (readonly TestCode[] | undefined)[] {
  const heard: (readonly TestCode[] | undefined)[] = [];
  desk.news.listen(({ tests }) => heard.push(tests));
  return heard;
}

const step = fc.constantFrom(...testCodes).chain((code) =>
  fc.record({
    code: fc.constant(code),
    seen: examplesOf[code].believable,
    variant: fc.constantFrom(...protocolOf(code).variants),
    bib: fc.integer({ min: 1, max: 3 }),
    minutes: fc.nat(7),
    called: fc.option(fc.constantFrom(...testCodes)),
    skipped: fc.option(fc.constantFrom(...testCodes), { freq: 4 }),
  }),
);

test("an entry names the stations that it touches: no other one shows anything new, in whatever order tests are done", async () => {
  let narrow = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 8, maxLength: 20 }), async (steps) => {
      const day = await stationDay();
      const heard = hearTests(day);
      for (const { code, seen, variant, bib, minutes, called, skipped } of steps) {
        const who = { athleteId: day.idOf(bib) };
        day.clock.pass(minutes);
        const calm = () => {};
        if (called !== null) await day.station.callAthlete({ ...who, test: called }).catch(calm);
        if (skipped !== null) {
          await day.organiser.skip({ ...who, test: skipped, reason: "Sore", by: "OR" }).catch(calm);
        }
        const before = await seenAtStations(day);
        const count = heard.length;
        await day.station.enter(entry(who.athleteId, code, seen, { variant, sure: true })).catch(calm);
        const after = await seenAtStations(day);
        const changed = testCodes.filter((each) => before.get(each) !== after.get(each));
        const named = heard.length === count ? [] : (heard.at(-1) ?? testCodes);
        expect(testCodes.filter((each) => changed.includes(each) && !named.includes(each))).toEqual([]);
        if (heard.length > count && named.length < testCodes.length) narrow += 1;
      }
      day.desk.close();
    }),
    { numRuns: 20 },
  );
  // A feed that always names all would pass too, and spare nobody anything.
  expect(narrow).toBeGreaterThan(60);
});

test("a correction may move somebody else's attempt, and names every station", async () => {
  const day = await stationDay();
  const first = entry(day.idOf(1), "push-up", reps(20));
  await day.station.enter(first);
  const heard = hearTests(day);
  const replaces = { attemptId: first.attempts[0]?.id ?? "", reason: "Other bib" };
  await day.station.enter(entry(day.idOf(2), "push-up", reps(20), { replaces }));
  expect(heard).toEqual([undefined]);
  day.desk.close();
});

test("a station reads the beginning of its queue, and is told how long all of it is", async () => {
  const day = await stationDay();
  const { queue, counts } = await day.station.view({ test: "push-up", most: 2 });
  expect(queue.map(({ who }) => who.bib)).toEqual([1, 2]);
  expect(counts.waiting).toBe(6);
  expect((await day.station.view({ test: "push-up" })).queue).toHaveLength(6);
  day.desk.close();
});

test("what twelve devices and three big screens read after a change costs little more than what one of each does", async () => {
  const day = await boardDay(crowd(150));
  for (let bib = 1; bib <= 150; bib += 1) {
    await day.enter(bib, "push-up", reps(20));
    await day.enter(bib, "core", { held: 90_000 });
  }
  const device = async () => {
    const { station, heat } = day.as("station");
    for (const code of ["push-up", "agility"] as const) {
      await station.view({ test: code, most: 8 });
      await heat.view({ test: code });
    }
  };
  const wall = () => day.as("board").board.view();
  const read = countingRows(day);
  async function costOf(times: number): Promise<number> {
    await day.enter(times, "vertical", { standingReach: 2100, touchReach: 2500 });
    const before = read();
    for (let count = 0; count < times; count += 1) await Promise.all([device(), wall()]);
    return read() - before;
  }
  await costOf(2);
  const [one, twelve] = [await costOf(1), await costOf(12)];
  expect(one).toBeGreaterThan(0);
  expect(twelve / one).toBeLessThan(3);
  day.desk.close();
});

/** Counts statements that ask, and the rows that they return; the returned function tells how many so far. */
function countingRows({ desk }: TestDesk): () => number {
  const asking = Object.getPrototypeOf(connectionOf(desk.store.db).prepare("SELECT 1")) as Statement;
  let count = 0;
  for (const way of ["all", "get"] as const) {
    const own = asking[way];
    const counted = function (this: Statement, ...values: unknown[]): unknown {
      const answer: unknown = Reflect.apply(own, this, values);
      count += 1 + (Array.isArray(answer) ? answer.length : 1);
      return answer;
    };
    Object.assign(asking, { [way]: counted });
    onTestFinished(() => void Object.assign(asking, { [way]: own }));
  }
  return () => count;
}
