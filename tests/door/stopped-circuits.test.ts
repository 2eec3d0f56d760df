import { expect, test } from "vitest";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { type BoardDay, boardDay } from "./board-day.ts";
import { setState, ticket } from "./station-day.ts";

const stop = (roundsDone: number, repsDone: number) => ({ finished: false, roundsDone, repsDone });
const finish = (time: number) => ({ finished: true, time });

function circuit(day: BoardDay, dayId: number, seen: unknown): void {
  const athleteId = day.ids[0] ?? 0;
  const how = { enteredBy: "QA", note: "", source: "sheet", replaces: null } as const;
  const at = day.clock.at.toISOString();
  const which = { athleteId, test: "endurance", variant: "", at } as const;
  day.desk.store.write(["attempts"], (db) => recordAttempt(db, dayId, { ...ticket(seen), ...which, ...how }));
}

/** Days on which somebody did these circuits, one each; the last is open. */
async function circuits(first: unknown, ...later: readonly unknown[]): Promise<BoardDay> {
  const day = await boardDay([{ league: "Foundry Town", name: "Ash Velvet" }]);
  circuit(day, day.dayId, first);
  for (const [at, seen] of later.entries()) {
    const { day: next } = day.as("organiser");
    await next.close({ dayId: at === 0 ? day.dayId : ((await next.current()).day?.id ?? 0) });
    const { dayId } = await next.create({ date: `2026-11-${20 + at}`, title: "Later", sure: true });
    await next.open({ sure: true });
    setState(day, dayId, day.ids[0] ?? 0, "testing", 1);
    circuit(day, dayId, seen);
  }
  return day;
}

/** What the card and the athlete's page say beside the circuit. */
async function told(day: BoardDay) {
  const athleteId = day.ids[0] ?? 0;
  const { cards } = await day.as("organiser").cards.list({ which: { kind: "athlete", athleteId } });
  const onCard = cards[0]?.tests.find(({ test: code }) => code === "endurance")?.told;
  const page = await day.as("organiser").people.get({ athleteId });
  expect(page.marks.find(({ test: code }) => code === "endurance")?.beside).toEqual(onCard?.beside);
  expect(day.faults).toEqual([]);
  return onCard;
}

test("stopped, then stopped again: reps done, then and now", async () => {
  expect(await told(await circuits(stop(1, 89), stop(2, 15)))).toMatchObject({
    news: null,
    beside: [{ key: "marks.stopped.again", values: { done: 195, of: 270, before: 179 } }],
  });
});

test("stopped, then finished: a first result that says what was before", async () => {
  expect(await told(await circuits(stop(2, 15), finish(372_400)))).toMatchObject({
    news: { standing: "first", change: null },
    beside: [{ key: "marks.stopped.finishedNow", values: { before: 195, of: 270 } }],
  });
});

test("finished, then stopped: how far, and the time of before", async () => {
  expect(await told(await circuits(finish(372_400), stop(0, 40)))).toMatchObject({
    news: null,
    beside: [{ key: "marks.stopped.finishedBefore", values: { done: 40, of: 270, time: "6:12.4" } }],
  });
});

test("of three circuits the last one before counts, and a finish is still compared with the finish", async () => {
  expect(await told(await circuits(finish(372_400), stop(2, 80), finish(366_800)))).toMatchObject({
    news: { change: 5600, previous: 372_400 },
    beside: [{ key: "marks.stopped.finishedNow", values: { before: 260, of: 270 } }],
  });
  expect(await told(await circuits(stop(2, 80), finish(372_400), finish(366_800)))).toMatchObject({
    beside: [],
  });
});

test("a first stop has nothing beside it", async () => {
  expect(await told(await circuits(stop(1, 0)))).toMatchObject({ news: null, beside: [] });
});
