import { describe, expect, test } from "vitest";
import type { Reference } from "../../electron/api/place/groups.ts";
import { placeOf, placesOn } from "../../electron/api/place/place.ts";
import type { Place } from "../../electron/api/place/schemas.ts";
import { fingerprint } from "../../electron/domain/protocols/fingerprint.ts";
import { defaultParameters } from "../../electron/domain/protocols/registry.ts";
import { dayById } from "../../electron/store/days.ts";
import { type BoardDay, boardDay } from "./board-day.ts";
import { testDesk } from "./desk.ts";
import { addPeople, type Invented } from "./people-of-a-day.ts";
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

function placeIn(day: BoardDay, bib: number, references: readonly Reference[] = []): Place | null {
  const { db } = day.desk.store;
  const held = dayById(db, day.dayId);
  if (held === undefined) throw new Error("The day is gone.");
  return placeOf(db, held, day.ids[bib - 1] ?? 0, "push-up", "full", bib, references);
}

describe("who is counted", () => {
  test("twenty others who share are enough, and a mark is not among its own others", async () => {
    const day = await pushedUp(crowd(21));
    // Wilson's interval of 10 in 20 is 0.2993 to 0.7007.
    expect(placeIn(day, 11)).toEqual({ group: "today", origin: null, n: 20, low: 29, high: 71 });
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

  test("who may be under 18 counts only with the guardian's consent", async () => {
    const minors = (guardianConsent: boolean) =>
      crowd(21, (index) => (index < 5 ? { birthYear: 2010, guardianConsent } : {}));
    expect(placeIn(await pushedUp(minors(false)), 11)).toBeNull();
    expect(placeIn(await pushedUp(minors(true)), 11)).toMatchObject({ n: 20 });
  });

  test("only who wants to be compared in the same category", async () => {
    const mixed = await pushedUp(crowd(42, (index) => ({ category: index < 21 ? "women" : "open" })));
    expect(placeIn(mixed, 11)).toMatchObject({ n: 20, low: 29, high: 71 });
    expect(placeIn(mixed, 42)).toMatchObject({ n: 20, high: 100 });
    const unsaid = await pushedUp(crowd(21, (index) => ({ category: index === 10 ? null : "women" })));
    expect(placeIn(unsaid, 11)).toBeNull();
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
    expect(placeOf(db, held, late, "push-up", "full", 30)).toMatchObject({ n: 20, high: 100 });
    expect(placeOf(db, held, late, "push-up", "knee", 30)).toBeNull();
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
    const found = placeOf(db, held, half[0] ?? 0, "push-up", "full", 50);
    expect(found).toMatchObject({ group: "store", n: 29 });
    // 15 + 14 / 2 of 29: Wilson 0.5789 to 0.8778, worked out apart.
    expect(found).toMatchObject({ low: 57, high: 88 });
    // The autumn's place knows nothing of the spring.
    expect(placeIn(day, 11)).toMatchObject({ group: "today", n: 29 });
  });

  test("a reference from elsewhere when it is the widest, and only of the same rules and category", async () => {
    const day = await pushedUp(crowd(21));
    const values = Array.from({ length: 100 }, (_, index) => index + 1);
    const reference: Reference = {
      ...{
        origin: "Two seasons of the north",
        test: "push-up",
        fingerprint: name,
        category: "women",
        values,
      },
    };
    // Ten worse and one equal of a hundred: Wilson of 10.5 is 0.0589 to 0.1804, worked out apart.
    expect(placeIn(day, 11, [reference])).toEqual({
      ...{ group: "imported", origin: "Two seasons of the north", n: 100, low: 5, high: 19 },
    });
    for (const other of [
      { ...reference, fingerprint: `${name} other` },
      { ...reference, category: "men" as const },
      { ...reference, values: values.slice(0, 20) },
    ]) {
      expect(placeIn(day, 11, [other])).toMatchObject({ group: "today", n: 20 });
    }
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
  await organiser.day.create({ date, title: "Spring testing day" });
  return (await organiser.day.open()).dayId;
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
    await expect(as("board").people.get({ athleteId: 1 })).rejects.toThrow("may not");
    await expect(as("station").people.get({ athleteId: 1 })).rejects.toThrow("may not");
  });
});
