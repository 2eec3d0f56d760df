import { describe, expect, test } from "vitest";
import { placesOn } from "../../electron/api/place/place.ts";
import type { AlikeMarks } from "../../electron/domain/reference/bundle.ts";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import { defaultParameters } from "../../electron/domain/tests/registry.ts";
import { dayById } from "../../electron/store/tables/days.ts";
import { addReference, removeReference } from "../../electron/store/tables/reference-bundles.ts";
import { connectionOf } from "../store/connection.ts";
import { type BoardDay, boardDay } from "./board-day.ts";
import { testDesk } from "./desk.ts";
import { addPeople, type Invented } from "./people-of-a-day.ts";
import { placeIn } from "./place-of-bib.ts";
import { entry, reps, setState, ticket } from "./station-day.ts";

const name = fingerprint("push-up", "full", defaultParameters("push-up"));

function crowd(count: number, differing: (index: number) => Partial<Invented> = () => ({})): Invented[] {
  return Array.from({ length: count }, (_, index) => ({
    ...{ league: "Alder", name: `Skater ${index}`, category: "women" as const, share: true },
    ...differing(index),
  }));
}

/** Everybody does as many push-ups as their bib has in it: of 1 to n, bib k is better than k − 1 of the others. */
async function pushedUp(people: Invented[]): Promise<BoardDay> {
  const day = await boardDay(people);
  for (const bib of people.keys()) await day.enter(bib + 1, "push-up", reps(bib + 1));
  return day;
}

describe("who is counted", () => {
  test("twenty others who share are enough, and a mark is not among its own others", async () => {
    const day = await pushedUp(crowd(21));
    // 1.96 · √(1.5² + (0.066 · 11)²) = 3.27: from better than 7 of 20 to better than 13, and Wilson's interval on top of
    // both, 0.1812 to 0.8188, worked out apart.
    expect(placeIn(day, 11)).toEqual({
      ...{ group: "today", origin: null, halls: null, ages: null, end: null },
      ...{ n: 20, low: 18, high: 82 },
    });
    expect(placeIn(day, 21)).toMatchObject({ high: 100 });
    expect(placeIn(day, 1)).toMatchObject({ low: 0 });
  });

  test("nineteen are not enough, whoever they are", async () => {
    expect(placeIn(await pushedUp(crowd(20)), 10)).toBeNull();
  });

  test("nobody counts without having agreed to share, and a mark's own owner needs not have", async () => {
    expect(placeIn(await pushedUp(crowd(40, (index) => ({ share: index % 2 === 0 }))), 1)).toBeNull();
    const own = await pushedUp(crowd(21, (index) => ({ share: index !== 10 })));
    expect(placeIn(own, 11)).toMatchObject({ n: 20 });
  });

  test("sharing taken back counts at once", async () => {
    const day = await pushedUp(crowd(21));
    await day.consent(3, "bib");
    expect(placeIn(day, 11)).toBeNull();
  });

  test("who did not finish a circuit ranks after every finisher, and is one of the others", async () => {
    const day = await boardDay(crowd(21));
    for (let bib = 1; bib <= 21; bib += 1) {
      const seen =
        bib <= 10 ? { finished: false, roundsDone: 2, repsDone: 1 } : { finished: true, time: 200_000 };
      await day.enter(bib, "endurance", seen);
    }
    const { db } = day.desk.store;
    const held = dayById(db, day.dayId);
    if (held === undefined) throw new Error("The day is gone.");
    // The median finisher, all of whom are alike here: ten did not finish and are worse, however bad the day. Wilson of 10
    // in 20 is 0.2993, worked out apart; without them nobody could be told anything.
    const place = placesOn(
      db,
      held,
    )({ athleteId: day.ids[20] ?? 0, test: "endurance", variant: "", value: 200_000 });
    expect(place).toMatchObject({ group: "today", n: 20, low: 29, high: 100 });
  });

  test("who may be under 18 counts only with the guardian's consent", async () => {
    const minors = (guardianConsent: boolean) =>
      crowd(21, (index) => (index < 5 ? { birthYear: 2010, guardianConsent } : {}));
    expect(placeIn(await pushedUp(minors(false)), 11)).toBeNull();
    expect(placeIn(await pushedUp(minors(true)), 11)).toMatchObject({ n: 20 });
  });

  test("only who wants to be compared in the same category", async () => {
    const mixed = await pushedUp(crowd(42, (index) => ({ category: index < 21 ? "women" : "open" })));
    expect(placeIn(mixed, 11)).toMatchObject({ n: 20, low: 18, high: 82 });
    expect(placeIn(mixed, 42)).toMatchObject({ n: 20, high: 100 });
    const unsaid = await pushedUp(crowd(21, (index) => ({ category: index === 10 ? null : "women" })));
    expect(placeIn(unsaid, 11)).toBeNull();
  });

  test("twenty others of the own age band come before all ages, nineteen do not", async () => {
    // 2000 and 2001 are 26 and 25 in 2026, in one band; 1990 is 36.
    const young = (count: number) =>
      crowd(42, (index) => ({ birthYear: index < count ? 2000 + (index % 2) : 1990 }));
    const some = await pushedUp(young(21));
    expect(placeIn(some, 11)).toMatchObject({ n: 20, ages: { from: 25, to: 29 }, low: 18, high: 82 });
    const few = await pushedUp(young(20));
    expect(placeIn(few, 11)).toMatchObject({ n: 41, ages: null });
    // An unknown year of birth is no age.
    const unknown = await pushedUp(crowd(21, (index) => ({ birthYear: index === 10 ? null : 2000 })));
    expect(placeIn(unknown, 11)).toMatchObject({ n: 20, ages: null });
  });

  test("the ends of a test are named, and beyond them nobody is told apart", async () => {
    const day = await boardDay(crowd(21));
    for (let bib = 1; bib <= 21; bib += 1) await day.enter(bib, "core", { held: 1000 * (200 + 20 * bib) });
    const { db } = day.desk.store;
    const held = dayById(db, day.dayId);
    if (held === undefined) throw new Error("The day is gone.");
    const planks = (bib: number) =>
      placesOn(
        db,
        held,
      )({ athleteId: day.ids[bib - 1] ?? 0, test: "core", variant: "", value: 200 + 20 * bib });
    // The last stage ends at 240 s, bib 2: bibs 2 to 21 are equal.
    expect(planks(21)).toMatchObject({ end: "ceiling", high: 100 });
    expect(planks(3)).toEqual(planks(21));
    expect(planks(1)).toMatchObject({ end: null });
    const none = await pushedUp(crowd(21));
    const { db: other } = none.desk.store;
    const day2 = dayById(other, none.dayId);
    if (day2 === undefined) throw new Error("The day is gone.");
    expect(
      placesOn(other, day2)({ athleteId: none.ids[0] ?? 0, test: "push-up", variant: "full", value: 0 }),
    ).toMatchObject({
      end: "floor",
      low: 0,
    });
  });

  test("only marks of the same variant", async () => {
    const day = await pushedUp(crowd(20));
    const { db } = day.desk.store;
    const [held, station] = [dayById(db, day.dayId), day.as("station").station];
    if (held === undefined) throw new Error("The day is gone.");
    const [late = 0] = addPeople(
      day,
      crowd(1, () => ({ name: "Late" })),
      day.dayId,
    );
    setState(day, day.dayId, late, "testing", 99);
    const knee = { variant: "knee", attempts: [ticket(reps(30))], sure: true };
    await station.enter(entry(late, "push-up", null, knee));
    expect(
      placesOn(db, held)({ athleteId: late, test: "push-up", variant: "full", value: 30 }),
    ).toMatchObject({ n: 20, high: 100 });
    expect(placesOn(db, held)({ athleteId: late, test: "push-up", variant: "knee", value: 30 })).toBeNull();
  });

  test("a void mark is none", async () => {
    const day = await pushedUp(crowd(21));
    const told = await day.as("organiser").people.get({ athleteId: day.ids[4] ?? 0 });
    const attemptId = told.attempts[0]?.attemptId ?? "";
    await day.as("station").station.void({ attemptId, reason: "wrong lane", by: "QA" });
    expect(placeIn(day, 11)).toBeNull();
  });
});

describe("which group", () => {
  test("all days of the store once they hold more, each athlete once with the latest mark", async () => {
    const day = await pushedUp(crowd(30));
    await day.as("organiser").day.close({ dayId: day.dayId });
    const dayId = await nextDay(day, "2027-03-13");
    const [half, { station }] = [day.ids.slice(0, 15), day.as("station")];
    for (const [index, athleteId] of half.entries()) {
      setState(day, dayId, athleteId, "testing", index + 1);
      await station.enter(entry(athleteId, "push-up", null, { attempts: [ticket(reps(50))], sure: true }));
    }
    const { db } = day.desk.store;
    const held = dayById(db, dayId);
    if (held === undefined) throw new Error("The day is gone.");
    // Fourteen others did 50 today; fifteen who stayed away did 16 to 30 last time.
    const found = placesOn(
      db,
      held,
    )({ athleteId: half[0] ?? 0, test: "push-up", variant: "full", value: 50 });
    expect(found).toMatchObject({ group: "store", n: 29 });
    // 50 less 7.1 is better than 15 of 29, and 50 more than all: Wilson 0.3443 and 1, worked out apart.
    expect(found).toMatchObject({ low: 34, high: 100 });
    // The autumn's place knows nothing of the spring.
    expect(placeIn(day, 11)).toMatchObject({ group: "today", n: 29 });
  });

  describe("from elsewhere", () => {
    type Told = Pick<AlikeMarks, "low" | "high"> & Partial<AlikeMarks>;

    /** Keeps a bundle of these marks; the name is its origin, and its hash too. */
    function bring(day: BoardDay, origin: string, marks: readonly Told[], rules = name): number {
      const test = { test: "push-up", variant: "full", fingerprint: rules } as const;
      const rest = { category: "women", ageBand: "not told", quarter: "2026-Q1", count: 1 } as const;
      const bundle = {
        contentSha256: origin,
        tests: [test],
        marks: marks.map((mark) => ({ ...test, ...rest, ...mark })),
      };
      const kept = { origin, kind: "marks", sha256: origin, addedAt: "2026-11-01T10:00:00.000Z" } as const;
      return day.desk.store.write(["people"], (db) => addReference(db, kept, bundle));
    }

    const oneToHundred = Array.from({ length: 100 }, (_, index) => ({ low: index + 1, high: index + 2 }));

    test("the reference when it says most, with its origin and how many; taken away, it is as before", async () => {
      const day = await pushedUp(crowd(21));
      const before = placeIn(day, 11);
      const id = bring(day, "Two seasons of the north", oneToHundred);
      // From 7 worse of a hundred, 3.27 reps below, to 14: Wilson 0.0343 and 0.2214, worked out apart.
      expect(placeIn(day, 11)).toEqual({
        ...{ group: "imported", origin: "Two seasons of the north", halls: null, ages: null, end: null },
        ...{ n: 100, low: 3, high: 23 },
      });
      day.desk.store.write(["people"], (db) => removeReference(db, id));
      expect(placeIn(day, 11)).toEqual(before);
      expect(before).toMatchObject({ group: "today", n: 20 });
    });

    test("only of the same rules and category, and twenty of them", async () => {
      const day = await pushedUp(crowd(21));
      bring(day, "Other rules", oneToHundred, `${name} other`);
      bring(
        day,
        "Men",
        oneToHundred.map((mark) => ({ ...mark, category: "men" })),
      );
      bring(day, "Few", oneToHundred.slice(0, 19));
      expect(placeIn(day, 11)).toMatchObject({ group: "today", n: 20 });
    });

    test("bundles of one origin count together, others apart", async () => {
      const day = await pushedUp(crowd(10));
      bring(day, "North", oneToHundred.slice(0, 12));
      const { db } = day.desk.store;
      bring(day, "South", oneToHundred.slice(0, 12));
      expect(placeIn(day, 5)).toBeNull();
      connectionOf(db).exec("UPDATE reference SET origin = 'North'");
      expect(placeIn(day, 5)).toMatchObject({ group: "imported", origin: "North", n: 24 });
    });

    test("marks told as bounds give both ends of what they leave open", async () => {
      const day = await pushedUp(crowd(10));
      // 30 surely below 10, 40 from 10 to 20, 30 from 20 on; a mark of 10 is better than 30 to 70 of them.
      const told = [
        { low: null, high: 10, count: 30 },
        { low: 10, high: 20, count: 40 },
        { low: 20, high: null, count: 30 },
      ];
      bring(day, "North", told);
      // 3.2 reps fewer are better than none for sure, 3.2 more than 70 at most: Wilson 0.7811, worked out apart.
      expect(placeIn(day, 10)).toMatchObject({ n: 100, low: 0, high: 79 });
    });

    test("coarse bounds lose to fewer exact marks, and only where they must be many more", async () => {
      const day = await pushedUp(crowd(31));
      bring(day, "Halves", [
        { low: null, high: 20, count: 300 },
        { low: 20, high: null, count: 300 },
      ]);
      expect(placeIn(day, 11)).toMatchObject({ group: "today", n: 30 });
    });

    test("marks whose category was not told only where nothing else is, and it is said", async () => {
      const mixed = oneToHundred.map((mark) => ({ ...mark, category: "not told" as const }));
      const few = await pushedUp(crowd(10));
      bring(few, "North", mixed);
      expect(placeIn(few, 5)).toMatchObject({ group: "mixed", origin: "North", n: 100 });
      const many = await pushedUp(crowd(21));
      bring(many, "North", mixed);
      expect(placeIn(many, 5)).toMatchObject({ group: "today", n: 20 });
    });
  });

  test("the same for many as for one", async () => {
    const day = await pushedUp(crowd(25));
    const { db } = day.desk.store;
    const held = dayById(db, day.dayId);
    if (held === undefined) throw new Error("The day is gone.");
    const find = placesOn(db, held);
    for (const [index, athleteId] of day.ids.entries()) {
      const mark = { athleteId, test: "push-up", variant: "full", value: index + 1 } as const;
      expect(find(mark)).toEqual(placeIn(day, index + 1));
    }
  });
});

async function nextDay({ as }: BoardDay, date: string): Promise<number> {
  const organiser = as("organiser");
  await organiser.day.create({ date, title: "Spring testing day", sure: true });
  return (await organiser.day.open({ sure: true })).dayId;
}

describe("the board", () => {
  /** Every key anywhere in an answer. */
  function keysIn(value: unknown): string[] {
    if (Array.isArray(value)) return value.flatMap(keysIn);
    if (typeof value !== "object" || value === null) return [];
    return Object.entries(value).flatMap(([key, part]) => [key, ...keysIn(part)]);
  }

  test("is told no place, of a day where everybody has one", async () => {
    const day = await pushedUp(crowd(21, () => ({ board: "name" })));
    expect(placeIn(day, 11)).not.toBeNull();
    const keys = new Set(keysIn(await day.view()));
    expect(keys.has("rows")).toBe(true);
    for (const key of ["place", "places", "low", "high", "n", "percentile", "rank", "series"]) {
      expect(keys.has(key)).toBe(false);
    }
  });

  test("may not ask for an athlete's page, where places are", async () => {
    const { as } = testDesk();
    await expect(as("board").people.get({ athleteId: 1 })).rejects.toThrow("can't do that");
    await expect(as("station").people.get({ athleteId: 1 })).rejects.toThrow("can't do that");
  });
});
