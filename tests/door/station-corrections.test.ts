import { expect, test } from "vitest";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { refusalOf } from "./desk.ts";
import {
  bringTo,
  type Entry,
  entry,
  past,
  reps,
  type StationDay,
  setState,
  stationDay,
  ticket,
  trial,
} from "./station-day.ts";

const idOf = (entered: Entry) => entered.attempts[0]?.id ?? "";

async function entered(day: StationDay, bib: number, count: number): Promise<string> {
  const first = entry(day.idOf(bib), "push-up", reps(count), { sure: true });
  await day.station.enter(first);
  return idOf(first);
}

test("a correction voids with a reason, adds the new attempt, and works the news out again", async () => {
  const day = await stationDay();
  past(day, 1, "push-up", 22, "2026-08-01", "full");
  const attemptId = await entered(day, 1, 25);
  const correction = entry(day.idOf(1), "push-up", reps(21), {
    replaces: { attemptId, reason: " Counted the off ones " },
    by: "CD",
  });
  expect(await day.station.enter(correction)).toMatchObject({
    outcome: "saved",
    told: { mark: { value: 21 }, news: { standing: "below", change: -1 } },
  });
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toMatchObject([
    { id: attemptId, void: { reason: "Counted the off ones", by: "CD" } },
    { id: idOf(correction), replaces: attemptId, void: null },
  ]);
});

test("a correction that is retried is one correction", async () => {
  const day = await stationDay();
  const attemptId = await entered(day, 1, 25);
  const replaces = { attemptId, reason: "Slip" };
  const correction = entry(day.idOf(1), "push-up", reps(21), { replaces });
  const first = await day.station.enter(correction);
  expect(await day.station.enter(correction)).toEqual(first);
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toHaveLength(2);
});

test("a correction that came before what it corrects, by way of another device, ends it when its own device brings it", async () => {
  const day = await stationDay();
  const lost = entry(day.idOf(1), "agility", trial("cw", 6, 1));
  const correction = entry(day.idOf(1), "agility", trial("ccw", 6, 2));
  // Two devices hand in to a table from an earlier backup: the one that corrected the correction comes first.
  await day.station.enter(correction);
  await day.station.enter(lost);
  const own = { ...correction, replaces: { attemptId: idOf(lost), reason: "Handed in" } };
  for (const _again of [1, 2]) expect(await day.station.enter(own)).toMatchObject({ outcome: "saved" });
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toMatchObject([
    { id: idOf(correction), void: null },
    { id: idOf(lost), void: { reason: "Handed in" } },
  ]);
});

test("an entry of which another device brought one attempt enters the other", async () => {
  const day = await stationDay();
  const [cw, ccw] = [ticket(trial("cw", 6, 1)), ticket(trial("ccw", 6, 2))];
  const one = entry(day.idOf(1), "agility", ccw.seen);
  await day.station.enter({ ...one, attempts: [ccw] });
  await day.station.enter({ ...one, attempts: [cw, ccw] });
  expect(attemptsOfDay(day.desk.store.db, day.dayId).map(({ id }) => id)).toEqual([ccw.id, cw.id]);
});

test("a doubtful correction is asked about, and the old attempt still stands", async () => {
  const day = await stationDay();
  const attemptId = await entered(day, 1, 25);
  const replaces = { attemptId, reason: "Slip" };
  const asked = await day.station.enter(entry(day.idOf(1), "push-up", reps(95), { replaces }));
  expect(asked).toMatchObject({ outcome: "ask" });
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toMatchObject([{ id: attemptId, void: null }]);
});

test("two windows correcting one attempt: the second hears that it was voided already", async () => {
  const day = await stationDay();
  const attemptId = await entered(day, 1, 25);
  const correct = (count: number, by: string) =>
    day.station.enter(
      entry(day.idOf(1), "push-up", reps(count), { by, replaces: { attemptId, reason: "Slip" } }),
    );
  await correct(21, "AB");
  expect(await refusalOf(correct(22, "CD"))).toEqual({
    key: "station.alreadyVoid",
    values: { by: "AB" },
  });
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toHaveLength(2);
});

test("an attempt keyed for the wrong bib moves to the right one, which gets the mark", async () => {
  const day = await stationDay();
  const attemptId = await entered(day, 1, 25);
  const replaces = { attemptId, reason: "Wrong bib" };
  await day.station.enter(entry(day.idOf(2), "push-up", reps(25), { replaces }));
  expect((await day.station.view({ test: "push-up" })).queue.map(({ who }) => who.bib)).toEqual([
    1, 3, 4, 5, 6,
  ]);
  const ofFirst = await day.station.history({ athleteId: day.idOf(1), test: "push-up" });
  expect(ofFirst).toMatchObject([
    { attempt: { who: { bib: 1 }, void: { reason: "Wrong bib" } }, replacedBy: [expect.any(String)] },
    { attempt: { who: { bib: 2 }, void: null }, replacedBy: [] },
  ]);
});

test("it moves to nobody who is not testing, and nothing is voided then", async () => {
  const day = await stationDay();
  const attemptId = await entered(day, 1, 25);
  setState(day, day.dayId, day.idOf(2), "withdrawn", 2);
  const replaces = { attemptId, reason: "Wrong bib" };
  const moved = day.station.enter(entry(day.idOf(2), "push-up", reps(25), { replaces }));
  expect((await refusalOf(moved)).key).toBe("station.state.withdrawn");
  expect(attemptsOfDay(day.desk.store.db, day.dayId)).toMatchObject([{ void: null }]);
});

test("an athlete's own slip can be corrected out of order and after withdrawing", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "core");
  const [first] = attemptsOfDay(day.desk.store.db, day.dayId);
  await day.station.void({ attemptId: first?.id ?? "", reason: "Not this person", by: "QA" });
  // The push-up is open again, so the next tests would be out of order for a new entry.
  setState(day, day.dayId, day.idOf(1), "withdrawn", 1);
  const turned = attemptsOfDay(day.desk.store.db, day.dayId).find(({ slot }) => slot === "ccw");
  const replaces = { attemptId: turned?.id ?? "", reason: "One lap more" };
  const fixed = await day.station.enter(entry(day.idOf(1), "agility", trial("ccw", 8, 1), { replaces }));
  // (31 + 33) / 2
  expect(fixed).toMatchObject({ told: { written: { number: "32" } } });
});

test("correcting full push-ups into knee push-ups leaves one mark, of the other way", async () => {
  const day = await stationDay();
  const attemptId = await entered(day, 1, 25);
  const replaces = { attemptId, reason: "On the knees" };
  const knee = entry(day.idOf(1), "push-up", reps(25), { variant: "knee", replaces });
  expect(await day.station.enter(knee)).toMatchObject({ outcome: "saved" });
  expect((await day.station.find({ test: "push-up", bib: "1" })).history).toMatchObject([
    { variant: "full", today: null },
    { variant: "knee", today: { mark: { value: 25 } } },
  ]);
});

test("voiding alone opens the test again; voiding twice keeps the first reason", async () => {
  const day = await stationDay();
  const attemptId = await entered(day, 1, 25);
  const none = day.station.void({ attemptId, reason: "", by: "QA" });
  expect((await refusalOf(none)).key).toBe("station.reason");
  expect(await day.station.void({ attemptId, reason: "Wrong person", by: "QA" })).toEqual({ told: null });
  await day.station.void({ attemptId, reason: "Again", by: "CD" });
  expect(await day.station.history({ attemptId })).toMatchObject([
    { attempt: { void: { reason: "Wrong person", by: "QA" } }, replacedBy: [] },
  ]);
  expect((await day.station.view({ test: "push-up" })).queue[0]?.who.bib).toBe(1);
});

test("a retry that arrives after its attempt was voided enters nothing", async () => {
  const day = await stationDay();
  const first = entry(day.idOf(1), "push-up", reps(25));
  await day.station.enter(first);
  await day.station.void({ attemptId: idOf(first), reason: "Wrong person", by: "QA" });
  expect(await day.station.enter(first)).toEqual({ outcome: "saved", told: null });
});

test("an attempt of another test or of nobody can't be corrected or voided", async () => {
  const day = await stationDay();
  const attemptId = await entered(day, 1, 25);
  const seen = trial("cw", 7, 3);
  const other = entry(day.idOf(1), "agility", seen, { replaces: { attemptId, reason: "Slip" } });
  expect((await refusalOf(day.station.enter(other))).key).toBe("station.otherAttempt");
  const replaces = { attemptId: "nothing", reason: "Slip" };
  const nothing = entry(day.idOf(1), "push-up", reps(20), { replaces });
  expect((await refusalOf(day.station.enter(nothing))).key).toBe("record.unknownAttempt");
  const missing = day.station.void({ attemptId: "nothing", reason: "Slip", by: "QA" });
  expect((await refusalOf(missing)).key).toBe("record.unknownAttempt");
  const unseen = day.station.history({ attemptId: "nothing" });
  expect((await refusalOf(unseen)).key).toBe("record.unknownAttempt");
});

test("a history tells the whole chain from any attempt in it", async () => {
  const day = await stationDay();
  const ids = [await entered(day, 1, 25)];
  for (const count of [24, 23]) {
    const attemptId = ids.at(-1) ?? "";
    const next = entry(day.idOf(1), "push-up", null, {
      attempts: [ticket(reps(count))],
      replaces: { attemptId, reason: `It was ${count}` },
    });
    await day.station.enter(next);
    ids.push(idOf(next));
  }
  for (const attemptId of ids) {
    const chain = await day.station.history({ attemptId });
    expect(
      chain.map(({ attempt, replacedBy }) => [attempt.attemptId, attempt.void?.reason, replacedBy]),
    ).toEqual([
      [ids[0], "It was 24", [ids[1]]],
      [ids[1], "It was 23", [ids[2]]],
      [ids[2], undefined, []],
    ]);
  }
});
