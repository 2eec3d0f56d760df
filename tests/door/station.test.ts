import { expect, test } from "vitest";
import { startOf } from "../../electron/domain/keyed/keyed.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { leaveOut } from "../../electron/store/tables/entrants.ts";
import { marksOfDay } from "../../electron/store/tables/marks.ts";
import { inches } from "../lengths.ts";
import { refusalOf } from "./desk.ts";
import {
  bringTo,
  entry,
  hold,
  jump,
  past,
  reps,
  setState,
  stationDay,
  ticket,
  trial,
} from "./station-day.ts";

test("an entry is saved with its mark, how it is written, and its news", async () => {
  const day = await stationDay();
  past(day, 1, "push-up", 24, "2026-05-01", "full");
  past(day, 1, "push-up", 21, "2026-08-01", "full");
  past(day, 1, "push-up", 60, "2026-08-01", "knee");
  const saved = await day.station.enter(entry(day.idOf(1), "push-up", reps(28, 3)));
  // 28 − 3 = 25: better than 24, and 3 more than the level of 22 by 24 and, 13 weeks on, 21. Those are 2.86 more
  // than 22.14, of √(1.5² + (0.066 · 23.6)²) · √(0.68 + 0.09 + 1) (by hand) 0.996: 2 (1 − Φ(0.996)) = 0.319.
  expect(saved).toEqual({
    outcome: "saved",
    told: {
      variant: "full",
      mark: { state: "complete", value: 25 },
      written: { number: "25", unit: "reps" },
      news: {
        standing: "best",
        bestBefore: 24,
        gainOverBest: 1,
        previous: 21,
        previousDate: "2026-08-01",
        earlier: 2,
        level: 22,
        change: 3,
        beyond: expect.closeTo(2.86, 2),
        verdict: "likely gain",
        byChance: expect.closeTo(0.319, 3),
        chanceReal: expect.closeTo(0.71, 2),
      },
      // 21 after 24 was a likely loss.
      beside: [{ key: "marks.afterPoor" }],
    },
  });
});

test.each([
  [20, "below"],
  [24, "equal"],
  [25, "best"],
])("of %i reps after a best of 24 it says %s", async (value, standing) => {
  const day = await stationDay();
  past(day, 1, "push-up", 24, "2026-08-01", "full");
  const saved = await day.station.enter(entry(day.idOf(1), "push-up", reps(value)));
  expect(saved).toMatchObject({ told: { news: { standing } } });
});

test("a first mark is first and no best, and has nothing to compare with", async () => {
  const day = await stationDay();
  const saved = await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
  expect(saved).toMatchObject({ told: { news: { standing: "first", previous: null, verdict: null } } });
});

test("two trials of the quadrant jump make the mark of the protocol's example; one alone is incomplete", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "agility");
  const first = await day.station.enter(entry(day.idOf(1), "agility", trial("cw", 7, 3, 2)));
  expect(first).toMatchObject({ told: { mark: { state: "incomplete", missing: ["ccw"] }, news: null } });
  expect(await day.station.find({ test: "agility", bib: "1" })).toMatchObject({ taken: { cw: 1 } });
  const both = await day.station.enter(entry(day.idOf(1), "agility", trial("ccw", 7, 1)));
  // (31 − 1 + 29) / 2 = 29.5 (PROTOCOLS).
  expect(both).toMatchObject({ told: { written: { number: "29.5", unit: "landings" } } });
});

test("three touches of the leap are entered together and told in the unit asked for", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "vertical");
  const touches = [101.5, 102.5, 102].map(inches);
  const attempts = touches.map((touchReach) => ticket({ standingReach: inches(86.5), touchReach }));
  const saved = await day.station.enter(
    entry(day.idOf(1), "vertical", null, { attempts, lengths: "in", sure: true }),
  );
  // 16 in are 406.4 mm exactly.
  expect(saved).toMatchObject({
    told: { mark: { value: 406.4 * 20 }, written: { number: "16", unit: "in" } },
  });
  const { standing, variant, taken } = await day.station.find({ test: "vertical", bib: "1" });
  expect(taken).toEqual({ "": 3 });
  // The reach of today stands in its field, where it is asked for in the unit that it was read in.
  const seen = standing.map((attempt) => attempt.seen);
  expect(startOf("vertical", { seen, variant }, "in")).toEqual({ standingReach: "86.5" });
  expect(startOf("vertical", { seen, variant }, "cm")).toEqual({});
});

test("a retry with the same ids gets the same answer and enters nothing twice", async () => {
  const day = await stationDay();
  past(day, 1, "push-up", 24, "2026-08-01", "full");
  const ticketed = entry(day.idOf(1), "push-up", reps(26));
  const first = await day.station.enter(ticketed);
  day.clock.pass(3);
  expect(await day.station.enter(ticketed)).toEqual(first);
  await day.as("organiser").day.close({ dayId: day.dayId });
  // The answer may have got lost just before the organiser closed the day.
  expect(await day.station.enter(ticketed)).toEqual(first);
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toHaveLength(1);
});

test("other content under a known ticket is refused", async () => {
  const day = await stationDay();
  const ticketed = entry(day.idOf(1), "push-up", reps(26));
  await day.station.enter(ticketed);
  const id = ticketed.attempts[0]?.id ?? "";
  const other = { ...ticketed, attempts: [{ id, seen: reps(27) }] };
  expect((await refusalOf(day.station.enter(other))).key).toBe("record.otherAttempt");
});

test("two windows entering for one bib at once: the second hears who keyed the first, and nothing is doubled", async () => {
  const day = await stationDay();
  const windows = [
    day.station.enter(entry(day.idOf(1), "push-up", reps(20), { by: "AB" })),
    day.station.enter(entry(day.idOf(1), "push-up", reps(21), { by: "CD" })),
  ];
  const [first, second] = await Promise.allSettled(windows);
  expect(first).toMatchObject({ status: "fulfilled", value: { outcome: "saved" } });
  expect(second).toMatchObject({
    status: "rejected",
    reason: {
      code: "CONFLICT",
      cause: { sentence: { key: "test.push-up.taken", values: { by: "AB" } } },
    },
  });
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toHaveLength(1);
});

test("a doubtful value is asked about first, and nothing is written or announced", async () => {
  const day = await stationDay();
  const before = day.desk.store.seq();
  const doubtful = entry(day.idOf(1), "push-up", reps(90));
  expect(await day.station.enter(doubtful)).toEqual({
    outcome: "ask",
    questions: [{ key: "test.push-up.plausibility.high", values: { value: 90 } }],
  });
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toEqual([]);
  expect(day.desk.store.seq()).toBe(before);
  expect(await day.station.enter({ ...doubtful, sure: true })).toMatchObject({ outcome: "saved" });
});

test("a mark more than four typical errors from the athlete's last is asked about", async () => {
  const day = await stationDay();
  past(day, 1, "push-up", 20, "2026-08-01", "full");
  // Typical error 2 reps: 28 is four of them away and passes, 29 is more.
  const far = entry(day.idOf(1), "push-up", reps(29));
  expect(await day.station.enter(far)).toEqual({
    outcome: "ask",
    questions: [{ key: "plausibility.differsFromLast", values: { last: "20", value: "29" } }],
  });
  expect(await day.station.enter(entry(day.idOf(1), "push-up", reps(28)))).toMatchObject({
    outcome: "saved",
  });
});

test("the same far mark is asked about once: a lower leap after it changes nothing", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "vertical");
  past(day, 1, "vertical", 6000, "2026-08-01");
  const far = entry(day.idOf(1), "vertical", jump(2100, 2600));
  expect(await day.station.enter(far)).toMatchObject({ outcome: "ask" });
  await day.station.enter({ ...far, sure: true });
  const lower = await day.station.enter(entry(day.idOf(1), "vertical", jump(2100, 2580)));
  expect(lower).toMatchObject({ outcome: "saved", told: { mark: { value: 10_000 } } });
});

test("the other way of doing push-ups on the same day is asked about", async () => {
  const day = await stationDay();
  await day.station.enter(entry(day.idOf(1), "push-up", reps(20), { by: "AB" }));
  const knee = entry(day.idOf(1), "push-up", reps(30), { variant: "knee" });
  expect(await day.station.enter(knee)).toEqual({
    outcome: "ask",
    questions: [{ key: "station.otherVariant.full", values: { by: "AB" } }],
  });
  expect(await day.station.enter({ ...knee, sure: true })).toMatchObject({ outcome: "saved" });
});

test.each([
  ["a mark of -1", { how: "tally", reps: 2, offAtEnd: -1 }, "marks.unreadableField"],
  ["a mark of 1e9", { how: "tally", reps: 1e9, offAtEnd: 0 }, "marks.unreadableField"],
  ["not a number", { how: "tally", reps: Number.NaN, offAtEnd: 0 }, "marks.unreadableField"],
  ["text", { how: "tally", reps: "1,5", offAtEnd: 0 }, "marks.unreadableField"],
  ["more off than done", reps(1, 2), "test.push-up.plausibility.offMoreThanReps"],
  ["above all belief", reps(301), "test.push-up.plausibility.tooHigh"],
  ["nothing", null, "marks.unreadable"],
])("what can't be is refused and not asked about: %s", async (_name, seen, key) => {
  const day = await stationDay();
  const refused = await refusalOf(day.station.enter(entry(day.idOf(1), "push-up", seen, { sure: true })));
  expect(refused.key).toBe(key);
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toEqual([]);
});

test("of three leaps with one impossible, none is taken", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "vertical");
  const count = attemptsOfDay(day.desk.store.db, day.dayId).length;
  const attempts = [jump(2100, 2500), jump(2100, 2050), jump(2100, 2510)].map(ticket);
  const call = day.station.enter(entry(day.idOf(1), "vertical", null, { attempts, sure: true }));
  expect((await refusalOf(call)).key).toBe("test.vertical.plausibility.touchBelowReach");
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toHaveLength(count);
});

test("of four leaps with room for three, none is taken", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "vertical");
  const count = attemptsOfDay(day.desk.store.db, day.dayId).length;
  const attempts = [2500, 2510, 2520, 2530].map((touch) => ticket(jump(2100, touch)));
  const call = day.station.enter(entry(day.idOf(1), "vertical", null, { attempts, sure: true }));
  expect((await refusalOf(call)).key).toBe("test.vertical.taken");
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toHaveLength(count);
});

test("a variant that the test does not know, no initials and odd initials are refused", async () => {
  const day = await stationDay();
  const plain = entry(day.idOf(1), "push-up", reps(20));
  expect((await refusalOf(day.station.enter({ ...plain, variant: "" }))).key).toBe("station.variant");
  for (const by of ["", " ", "ABCDE", "A1"]) {
    expect((await refusalOf(day.station.enter({ ...plain, by }))).key).toBe("station.initials");
  }
  await day.station.enter({ ...plain, by: " éa " });
  expect(attemptsOfDay(day.desk.store.db, day.dayId)[0]?.enteredBy).toBe("ÉA");
});

test("what is keyed from paper comes in any order, and nobody has to skip", async () => {
  const day = await stationDay();
  expect((await day.station.find({ test: "core", bib: "1" })).stillBefore).toBe("push-up");
  expect(await day.station.enter(entry(day.idOf(1), "core", hold(90)))).toMatchObject({ outcome: "saved" });
  await day.station.enter(entry(day.idOf(1), "agility", trial("cw", 7, 3)));
  expect(await day.station.enter(entry(day.idOf(1), "vertical", jump(2100, 2500)))).toMatchObject({
    outcome: "saved",
  });
  const { queue } = await day.station.view({ test: "push-up" });
  expect(queue.map(({ who }) => who.athleteId)).toContain(day.idOf(1));
  expect((await day.organiser.view({ test: "push-up" })).skipped).toEqual([]);
});

test("calls hold the order all the same", async () => {
  const day = await stationDay();
  await day.station.enter(entry(day.idOf(1), "core", hold(90)));
  const early = day.station.callAthlete({ athleteId: day.idOf(1), test: "agility" });
  expect(await refusalOf(early)).toEqual({ key: "test.push-up.first", values: { name: "Ada Rill" } });
});

test("a circuit that was not finished is kept, told without a number, and done", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "endurance");
  const stopped = { finished: false, roundsDone: 2, repsDone: 31 };
  const saved = await day.station.enter(entry(day.idOf(1), "endurance", stopped));
  expect(saved).toMatchObject({ told: { mark: { state: "unfinished", rounds: 2, reps: 31 }, news: null } });
  const view = await day.station.view({ test: "endurance" });
  expect(view.counts).toEqual({ done: 1, waiting: 0, later: 5, leftOut: 0 });
});

test.each(["expected", "not-testing", "no-show", "withdrawn"] as const)(
  "nobody who is %s is tested; the sentence says where to send them",
  async (state) => {
    const day = await stationDay();
    setState(day, day.dayId, day.idOf(1), state, 1);
    const key = `station.state.${state}`;
    expect((await refusalOf(day.station.find({ test: "push-up", bib: "1" }))).key).toBe(key);
    expect((await refusalOf(day.station.enter(entry(day.idOf(1), "push-up", reps(20))))).key).toBe(key);
    expect((await refusalOf(day.station.callAthlete({ athleteId: day.idOf(1), test: "push-up" }))).key).toBe(
      key,
    );
  },
);

test("a test left out at check-in is not taken", async () => {
  const day = await stationDay();
  const at = day.desk.now().toISOString();
  day.desk.store.write(["entrants"], (db) =>
    leaveOut(db, day.dayId, {
      athleteId: day.idOf(1),
      test: "push-up",
      kind: "readiness",
      reason: "",
      decidedBy: "QA",
      at,
    }),
  );
  const key = "station.leftOut.readiness";
  expect((await refusalOf(day.station.find({ test: "push-up", bib: "1" }))).key).toBe(key);
  expect((await refusalOf(day.station.enter(entry(day.idOf(1), "push-up", reps(20))))).key).toBe(key);
  // Only check-in can put it back.
  const back = day.organiser.unskip({ athleteId: day.idOf(1), test: "push-up" });
  expect((await refusalOf(back)).key).toBe(key);
  expect((await day.station.view({ test: "agility" })).queue.map(({ who }) => who.bib)).toEqual([1]);
});

test("somebody who is on no list, a bib nobody wears, and no number at all", async () => {
  const day = await stationDay();
  expect((await refusalOf(day.station.enter(entry(999, "push-up", reps(20))))).key).toBe("station.notListed");
  expect(await refusalOf(day.station.find({ test: "push-up", bib: "93" }))).toEqual({
    key: "station.noBib",
    values: { bib: 93 },
  });
  for (const bib of ["", "x1", "-1", "1.5"]) {
    expect((await refusalOf(day.station.find({ test: "push-up", bib }))).key).toBe("station.badBib");
  }
});

test("finding tells last and best for each way, how it was done last, and who must come first", async () => {
  const day = await stationDay();
  past(day, 1, "push-up", 24, "2026-05-01", "full");
  past(day, 1, "push-up", 21, "2026-08-01", "full");
  past(day, 1, "push-up", 40, "2026-09-01", "knee");
  const found = await day.station.find({ test: "push-up", bib: " 1 " });
  expect(found).toMatchObject({
    who: { bib: 1, name: "Ada Rill", number: "01", league: "Foundry Town" },
    variant: "knee",
    standing: [],
    stillBefore: null,
    history: [
      { variant: "full", today: null, last: { value: 21 }, best: { value: 24, date: "2026-05-01" } },
      { variant: "knee", last: { value: 40 }, best: { value: 40 } },
    ],
  });
  expect((await day.station.find({ test: "endurance", bib: "1" })).stillBefore).toBe("push-up");
});

test("the best circuit is the fastest", async () => {
  const day = await stationDay();
  past(day, 1, "endurance", 300_000, "2026-05-01");
  past(day, 1, "endurance", 320_000, "2026-08-01");
  const { history } = await day.station.find({ test: "endurance", bib: "1" });
  expect(history).toMatchObject([{ last: { value: 320_000 }, best: { value: 300_000 } }]);
});

test("nothing is entered before a day opens or after it closed", async () => {
  const day = await stationDay();
  await day.as("organiser").day.close({ dayId: day.dayId });
  const late = day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
  expect((await refusalOf(late)).key).toBe("day.none");
  await day.as("organiser").day.create({ date: "2026-11-21", title: "Another", sure: true });
  const early = day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
  expect((await refusalOf(early)).key).toBe("day.notOpen");
});

test("everything goes through the door as a Request, and its refusals come back as sentences", async () => {
  const day = await stationDay();
  const body = JSON.stringify({ athleteId: day.idOf(1), test: "core" });
  const request = new Request("http://desk/trpc/station.callAthlete", {
    method: "POST",
    headers: { "content-type": "application/json" },
    body,
  });
  const response = await day.handle(request, "station");
  expect(response.status).toBe(409);
  expect(await response.json()).toMatchObject({
    error: { data: { sentence: { key: "test.push-up.first", values: { name: "Ada Rill" } } } },
  });
  expect(day.faults).toEqual([]);
});

test("a leap after one trial is told as one of three and not held against three; the other two make it comparable", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "vertical");
  past(day, 1, "vertical", 40 * 200, "2026-08-01");
  const one = await day.station.enter(entry(day.idOf(1), "vertical", jump(2100, 2530)));
  expect(one).toMatchObject({
    told: {
      mark: { value: 43 * 200, trials: { done: 1, of: 3 } },
      written: { number: "43", note: { key: "marks.trials", values: { done: 1, of: 3 } } },
      // What was jumped was jumped; what the change is worth is not told.
      news: { standing: "best", previous: 40 * 200, change: null, verdict: null },
      beside: [{ key: "marks.otherwise.fewer", values: { count: 1 } }],
    },
  });
  const attempts = [jump(2100, 2500), jump(2100, 2510)].map(ticket);
  const all = await day.station.enter(entry(day.idOf(1), "vertical", null, { attempts, sure: true }));
  expect(all).toMatchObject({ told: { news: { change: 3 * 200, verdict: "likely gain" }, beside: [] } });
  expect(all).not.toHaveProperty("told.mark.trials");
});

test("where in the day and how rested a mark was made is kept, and told beside a change made otherwise", async () => {
  const day = await stationDay();
  const jumps = () => [trial("cw", 7, 3), trial("ccw", 7, 1)].map(ticket);
  await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
  day.clock.pass(6);
  await day.station.enter(entry(day.idOf(1), "agility", null, { attempts: jumps() }));
  expect(marksOfDay(day.desk.store.db, day.dayId).map(({ test: code, made }) => [code, made])).toEqual([
    ["push-up", { position: 1, restMinutes: null }],
    ["agility", { position: 2, restMinutes: 6 }],
  ]);
  await day.as("organiser").day.close({ dayId: day.dayId });
  const { day: next } = day.as("organiser");
  const { dayId } = await next.create({ date: "2026-11-21", title: "A week later", sure: true });
  await next.open({ sure: true });
  setState(day, dayId, day.idOf(1), "testing", 1);
  const skipped = {
    test: "push-up",
    kind: "skip",
    reason: "Wrist",
    decidedBy: "QA",
    at: day.clock.at.toISOString(),
  } as const;
  day.desk.store.write(["entrants"], (db) => leaveOut(db, dayId, { athleteId: day.idOf(1), ...skipped }));
  const later = await day.station.enter(
    entry(day.idOf(1), "agility", null, { attempts: jumps(), sure: true }),
  );
  expect(later).toMatchObject({
    told: {
      news: { change: 0 },
      beside: [{ key: "marks.otherwise.position", values: { now: 1, before: 2 } }],
    },
  });
});
