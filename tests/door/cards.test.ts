import { beforeEach, describe, expect, test } from "vitest";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { defaultParameters } from "../../electron/domain/tests/registry.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { ordinaryMs } from "../ordinary.ts";
import { type BoardDay, boardDay } from "./board-day.ts";
import { crowdedDay } from "./crowd.ts";
import { refusalOf, testDesk } from "./desk.ts";
import { entry, jump, reps, ticket, trial } from "./station-day.ts";

let day: BoardDay;

/** Bibs 1 to 4; the last has not done anything. */
const people = [
  { league: "Foundry Town", name: "Ash Velvet", number: "0000", birthYear: 2011, guardianConsent: true },
  { league: "Quarry Lane", name: "Briar Knox of the Everlasting Overlap", number: "" },
  { league: "Foundry Town", name: "Cinder Rue", number: "7" },
  { league: "Quarry Lane", name: "Dell Grant", number: "88" },
];

beforeEach(async () => {
  day = await boardDay(people);
});

const cards = () => day.as("organiser").cards;
const idOf = (bib: number) => day.ids[bib - 1] ?? 0;

/** As from paper, which comes in any order. */
function record(bib: number, test: TestCode, variant: string, seen: unknown): void {
  const how = { enteredBy: "QA", note: "", source: "sheet", replaces: null } as const;
  const attempt = {
    ...ticket(seen),
    athleteId: idOf(bib),
    test,
    variant,
    at: "2026-11-14T10:00:00Z",
    ...how,
  };
  day.desk.store.write(["attempts"], (db) => recordAttempt(db, day.dayId, attempt));
}

async function cardOf(bib: number) {
  const { cards: list } = await cards().list({ which: { kind: "athlete", athleteId: idOf(bib) } });
  const [card] = list;
  if (card === undefined || list.length !== 1) throw new Error(`Bib ${bib} has ${list.length} cards.`);
  return card;
}

describe("who has a card", () => {
  test("everybody with a mark, by league and name; a test half done is none", async () => {
    await day.enter(2, "push-up", reps(20));
    await day.enter(3, "push-up", reps(12));
    await day.enter(1, "push-up", reps(16));
    record(4, "agility", "", trial("cw", 7, 0));
    const { day: of, people: list, leagues, without } = await cards().people();
    expect(of).toMatchObject({ date: "2026-11-14", title: "Autumn testing day", state: "open" });
    expect(list.map(({ name }) => name)).toEqual(["Ash Velvet", "Cinder Rue", people[1]?.name]);
    expect(leagues.map(({ name, count }) => [name, count])).toEqual([
      ["Foundry Town", 2],
      ["Quarry Lane", 1],
    ]);
    expect(without).toBe(1);
    const { cards: all } = await cards().list({ which: { kind: "all" } });
    expect(all.map(({ name }) => name)).toEqual(list.map(({ name }) => name));
    const foundry = leagues[0]?.id ?? 0;
    const { cards: some } = await cards().list({ which: { kind: "league", leagueId: foundry } });
    expect(some.map(({ number }) => number)).toEqual(["0000", "7"]);
    const { cards: none } = await cards().list({ which: { kind: "athlete", athleteId: idOf(4) } });
    expect(none).toEqual([]);
  });

  test("the day that is held, else the last that was closed, or the one that is named", async () => {
    await day.enter(1, "push-up", reps(16));
    await day.as("organiser").day.close({ dayId: day.dayId });
    expect((await cards().people()).day).toMatchObject({ id: day.dayId, state: "closed" });
    const planned = await day.as("organiser").day.create({ date: "2027-03-13", title: "Spring", sure: true });
    expect((await cards().people()).day).toMatchObject({ id: day.dayId, state: "closed" });
    await day.as("organiser").day.open({ sure: true });
    expect(await cards().people()).toMatchObject({ day: { id: planned.dayId }, people: [] });
    const first = await cards().people({ dayId: day.dayId });
    expect(first).toMatchObject({ day: { id: day.dayId }, people: [{ name: "Ash Velvet" }] });
    expect(await refusalOf(cards().people({ dayId: 99 }))).toMatchObject({ key: "cards.noSuchDay" });
  });

  test("without any day there are no cards", async () => {
    const empty = testDesk();
    const { people: list, day: none } = await empty.as("organiser").cards.people();
    expect([list, none]).toEqual([[], null]);
    const call = empty.as("organiser").cards.list({ which: { kind: "all" } });
    expect(await refusalOf(call)).toMatchObject({ key: "day.none" });
  });

  test.each(["station", "board"] as const)("the %s is refused", async (who) => {
    const { cards: asked } = day.as(who);
    expect(await refusalOf(asked.people())).toMatchObject({ key: "door.forbidden" });
    expect(await refusalOf(asked.list({ which: { kind: "all" } }))).toMatchObject({ key: "door.forbidden" });
  });
});

describe("what stands on a card", () => {
  test("a mark with its best, the change from the level before and its verdict, and the next window", async () => {
    day.past(1, "push-up", 19, "2025-11-15");
    day.past(1, "push-up", 16, "2026-04-11");
    await day.enter(1, "push-up", reps(24));
    const { next } = await cards().list({ which: { kind: "all" } });
    expect(next).toEqual({ from: "2027-02-06", until: "2027-03-13" });
    const card = await cardOf(1);
    expect(card).toMatchObject({ name: "Ash Velvet", number: "0000", league: "Foundry Town", bib: 1 });
    const [pushUp] = card.tests;
    expect(pushUp).toMatchObject({
      test: "push-up",
      variant: "full",
      told: {
        written: { number: "24", unit: "reps" },
        // By 19 and, 21 weeks on, 16 the level is 16.9; 7.1 reps are 2.76 of what such a change varies by.
        news: {
          standing: "best",
          level: 17,
          earlier: 2,
          change: 7,
          verdict: "clear gain",
          previousDate: "2026-04-11",
        },
      },
      best: { number: "24" },
      assumed: true,
      place: null,
    });
    expect(pushUp?.points.map(({ date, value, today }) => [date, value, today])).toEqual([
      ["2025-11-15", 19, false],
      ["2026-04-11", 16, false],
      ["2026-11-14", 24, true],
    ]);
    expect(pushUp?.noise?.low).toBeLessThan(16);
    expect(card.tests.map(({ told }) => told !== null)).toEqual([true, false, false, false, false]);
    expect([card.tone, card.focus]).toEqual(["gain", { kind: "even", why: "few" }]);
  });

  test("a test not taken keeps its past; a mark after the day is not on its card", async () => {
    day.past(1, "core", 95, "2026-04-11");
    day.past(1, "push-up", 30, "2027-01-01");
    await day.enter(1, "push-up", reps(24));
    const card = await cardOf(1);
    expect(card.tests[3]).toMatchObject({ told: null, best: { number: "1:35" }, noise: expect.anything() });
    expect(card.tests[3]?.points).toHaveLength(1);
    expect(card.tests[0]?.points).toHaveLength(1);
    expect(card.tests[2]).toMatchObject({ told: null, best: null, points: [], noise: null });
  });

  test("full and knee push-ups never compare: the card is about the full ones, and names the others", async () => {
    const knee = fingerprint("push-up", "knee", defaultParameters("push-up"));
    day.desk.store.write(["people"], (db) =>
      addPastMark(db, {
        ...{ athleteId: idOf(1), fingerprint: knee, date: "2026-04-11", test: "push-up" },
        ...{ variant: "knee", value: 30 },
      }),
    );
    record(1, "vertical", "", jump(2100, 2500));
    expect((await cardOf(1)).tests[0]).toMatchObject({ variant: "knee", told: null, best: { number: "30" } });
    for (const [variant, count] of [
      ["knee", 28],
      ["full", 9],
    ] as const) {
      await day
        .as("organiser")
        .station.enter(entry(idOf(1), "push-up", reps(count), { variant, sure: true }));
    }
    const [pushUp] = (await cardOf(1)).tests;
    expect(pushUp).toMatchObject({ variant: "full", told: { written: { number: "9" } } });
    expect(pushUp?.also.map(({ variant, written }) => [variant, written.number])).toEqual([["knee", "28"]]);
    expect(pushUp?.points).toHaveLength(1);
  });

  test("a circuit stopped early stands on the card without a number", async () => {
    record(1, "endurance", "", { finished: false, roundsDone: 2, repsDone: 5 });
    expect((await cardOf(1)).tests[4]).toMatchObject({
      told: { written: { number: "", note: { key: "marks.unfinished" } }, news: null },
      best: null,
      points: [],
    });
  });

  test("a corrected mark changes the card", async () => {
    day.past(1, "push-up", 20);
    const first = entry(idOf(1), "push-up", reps(26), { sure: true });
    await day.as("organiser").station.enter(first);
    expect((await cardOf(1)).tests[0]?.told?.news).toMatchObject({ standing: "best", change: 6 });
    const replaces = { attemptId: first.attempts[0]?.id ?? "", reason: "Counted the off ones" };
    await day.as("organiser").station.enter(entry(idOf(1), "push-up", reps(19), { replaces, sure: true }));
    expect((await cardOf(1)).tests[0]).toMatchObject({
      told: { written: { number: "19" }, news: { standing: "below", change: -1 } },
      best: { number: "20" },
    });
  });

  test("nothing about age, consent or anybody else leaves with a card", async () => {
    for (const bib of [1, 2]) await day.enter(bib, "push-up", reps(15 + bib));
    const told = JSON.stringify(await cardOf(1));
    expect(told).not.toMatch(/birth|2011|guardian|consent|category|Briar|Quarry/i);
  });
});

test("the cards of 200 athletes with five tests and two years of marks come within a second", async () => {
  const crowded = await crowdedDay(200);
  const took = await ordinaryMs(async () => {
    const { cards: list } = await crowded.as("organiser").cards.list({ which: { kind: "all" } });
    expect(list).toHaveLength(200);
    expect(list.every(({ tests }) => tests.length === 5)).toBe(true);
  });
  expect(took).toBeLessThan(1000);
});
