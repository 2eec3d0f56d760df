import { beforeEach, describe, expect, test } from "vitest";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";
import { addPeople, answersOf, openDay } from "./people-of-a-day.ts";
import { setState, stationDay } from "./station-day.ts";

const first = "11111111-1111-4111-8111-111111111111";
const second = "22222222-2222-4222-8222-222222222222";
let made: TestDesk;

beforeEach(() => {
  made = testDesk();
});

const people = () => made.as("organiser").people;

describe("the list", () => {
  test("without a day, with nobody", async () => {
    const told = await people().list({});
    expect(told).toEqual({ people: [], total: 0, page: 0, pages: 1, leagues: [] });
  });

  test("by league and name, fifty a page, and a page too far is the last", async () => {
    const crowd = Array.from({ length: 120 }, (_, index) => ({
      league: index % 2 === 0 ? "Alder" : "Birch",
      name: `Skater ${String(index).padStart(3, "0")}`,
    }));
    addPeople(made, crowd, null);
    const first = await people().list({});
    expect([first.people.length, first.total, first.pages]).toEqual([50, 120, 3]);
    expect(first.people[0]?.name).toBe("Skater 000");
    expect(first.people[1]?.name).toBe("Skater 002");
    const last = await people().list({ page: 99 });
    expect([last.page, last.people.length]).toEqual([2, 20]);
    const birch = first.leagues.find(({ name }) => name === "Birch")?.id ?? 0;
    expect((await people().list({ leagueId: birch })).total).toBe(60);
    expect((await people().list({ leagueId: birch, query: "sk" })).total).toBe(60);
    expect((await people().list({ query: "skater 007" })).people[0]?.name).toBe("Skater 007");
  });
});

describe("one athlete", () => {
  test("today's marks with their news, every attempt with what became of it, and the marks over time", async () => {
    const dayId = await openDay(made);
    const [ada = 0] = addPeople(made, [{ league: "Alder", name: "Ada", birthYear: 1990 }], dayId);
    made.desk.store.write(["people"], (db) => {
      const past = { athleteId: ada, test: "push-up", variant: "full", value: 20 } as const;
      const fingerprint = "push-up/full beatsPerRep=2 bpm=40 missesToStop=3";
      addPastMark(db, { ...past, fingerprint, date: "2026-02-01" });
      addPastMark(db, { ...past, fingerprint: "push-up/full bpm=30", date: "2025-11-01", value: 33 });
    });
    await made.as("check-in").checkIn.admit(answersOf(ada));
    const by = { athleteId: ada, test: "push-up", variant: "full", by: "QA", sure: true } as const;
    const attempts = (id: string, reps: number) => [{ id, seen: { how: "tally", reps, offAtEnd: 0 } }];
    const { station } = made.as("station");
    await station.enter({ ...by, attempts: attempts(first, 52) });
    const replaces = { attemptId: first, reason: "keyed for the next lane" };
    await station.enter({ ...by, attempts: attempts(second, 25), replaces });

    const told = await people().get({ athleteId: ada });
    expect(told).toMatchObject({ name: "Ada", state: "testing", bib: 1, next: "agility" });
    expect(told.marks).toMatchObject([
      {
        test: "push-up",
        written: { number: "25", unit: "reps" },
        news: { standing: "best", bestBefore: 20, gainOverBest: 5, verdict: "likely gain" },
      },
    ]);
    expect(told.attempts.map(({ attemptId, void: ended }) => [attemptId, ended?.reason ?? null])).toEqual([
      [first, "keyed for the next lane"],
      [second, null],
    ]);
    expect(told.series).toMatchObject([
      {
        ...{ test: "push-up", variant: "full", placed: true, place: null },
        points: [
          {
            date: "2026-02-01",
            value: 20,
            today: false,
            source: "imported",
            standing: "first",
            change: null,
          },
          { date: "2026-11-14", value: 25, today: true, source: "day", standing: "best", change: 5 },
        ],
      },
    ]);
    expect(told.apart).toEqual([
      {
        ...{ test: "push-up", variant: "full", date: "2025-11-01", source: "imported", why: "otherRules" },
        written: { number: "33", unit: "reps" },
      },
    ]);
  });

  test("nobody has this id", async () => {
    expect((await refusalOf(people().get({ athleteId: 99 }))).key).toBe("checkIn.unknown");
    const call = people().setConsent({ athleteId: 99, board: "bib", share: false });
    expect((await refusalOf(call)).key).toBe("checkIn.unknown");
  });
});

describe("consent", () => {
  test("changes at any time, tells the windows, and counts as asked", async () => {
    const [ada = 0] = addPeople(made, [{ league: "Alder", name: "Ada", board: "name", share: true }], null);
    const heard: unknown[] = [];
    made.desk.news.listen(({ topics }) => heard.push(topics));
    await made.as("check-in").people.setConsent({ athleteId: ada, board: "hidden", share: false });
    expect(heard).toEqual([["people", "entrants"]]);
    const { board, share, asked, guardianConsent } = await people().get({ athleteId: ada });
    expect({ board, share, asked, guardianConsent }).toEqual({
      board: "hidden",
      share: false,
      asked: true,
      guardianConsent: false,
    });
  });
});

test("the list is narrowed to those with tests left, or with consents that are missing or not asked about", async () => {
  const day = await stationDay();
  const { people } = day.as("organiser");
  const names = async (need: "notDone" | "guardian" | "notAsked") =>
    (await people.list({ need })).people.map(({ name }) => name);
  expect(await names("notDone")).toHaveLength(6);
  expect(await names("guardian")).toEqual([]);
  expect(await names("notAsked")).toContain("Ada Rill");
  await people.setConsent({ athleteId: day.idOf(1), board: "bib", share: false });
  expect(await names("notAsked")).not.toContain("Ada Rill");
  const { athleteId, name, number, league, category } = await people.get({ athleteId: day.idOf(2) });
  await people.mend({ athleteId, name, number, league, category, birthYear: 2015 });
  expect(await names("guardian")).toEqual(["Bo Crank"]);
  setState(day, day.dayId, day.idOf(3), "withdrawn", 3);
  expect(await names("notDone")).not.toContain("Cy Loop");
  day.desk.close();
});
