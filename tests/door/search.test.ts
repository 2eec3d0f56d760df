import { beforeEach, describe, expect, test } from "vitest";
import { ordinaryMs } from "../ordinary.ts";
import { seeded, type TestDesk, testDesk } from "./desk.ts";
import { addPeople, answersOf, openDay } from "./people-of-a-day.ts";

const people = [
  { league: "Köhlermoor Rollers", name: "Zoë O'Hara", number: "07" },
  { league: "Köhlermoor Rollers", name: "Max Impact", number: "27" },
  { league: "Tidewater Wheels", name: "Brine Crusher", number: "27" },
  { league: "Tidewater Wheels", name: "Ångström Unit", number: "7" },
  { league: "Tidewater Wheels", name: "Petra Fied", number: "270" },
  { league: "North Quay", name: "Anna Conda", number: "" },
  { league: "North Quay", name: "Anna Log", number: "1" },
];

let made: TestDesk;
let ids: number[];

beforeEach(async () => {
  made = testDesk();
  const dayId = await openDay(made);
  ids = addPeople(made, people, dayId);
});

async function names(query: string): Promise<string[]> {
  const found = await made.as("check-in").checkIn.search({ query });
  return found.people.map(({ name }) => name);
}

describe("a scrap of a name is enough", () => {
  test.each([
    ["the beginning", "pet", "Petra Fied"],
    ["the second word", "conda", "Anna Conda"],
    ["another letter case", "MAX IMP", "Max Impact"],
    ["without accents", "zoe", "Zoë O'Hara"],
    ["without the ring", "angstrom", "Ångström Unit"],
    ["with accents that are not there", "bríne", "Brine Crusher"],
    ["without the apostrophe", "ohara", "Zoë O'Hara"],
    ["words written together", "maxim", "Max Impact"],
    ["a letter missing", "crsher", "Brine Crusher"],
    ["a letter too many", "peetra", "Petra Fied"],
    ["two letters swapped", "cursher", "Brine Crusher"],
    ["words the other way round", "log anna", "Anna Log"],
    ["name and league", "anna quay log", "Anna Log"],
    ["name and number", "brine 27", "Brine Crusher"],
    ["blanks around it", "   petra   ", "Petra Fied"],
  ])("%s", async (_what, query, name) => {
    expect((await names(query))[0]).toBe(name);
  });

  test("a league finds all its athletes", async () => {
    expect((await names("tidewater")).sort()).toEqual(["Brine Crusher", "Petra Fied", "Ångström Unit"]);
    expect((await names("kohlermoor")).sort()).toEqual(["Max Impact", "Zoë O'Hara"]);
  });

  test("what was typed as it stands comes before what is forgiven", async () => {
    expect((await names("anna"))[0]).toMatch(/^Anna/);
    expect((await names("anna"))[1]).toMatch(/^Anna/);
  });

  test("nothing like it finds nobody, and signs alone break nothing", async () => {
    expect(await names("qqqqqqq")).toEqual([]);
    for (const query of ["!!!", "'", "%", "🛼", "\u0000", "x".repeat(200)]) {
      await expect(names(query)).resolves.toBeDefined();
    }
  });
});

describe("digits", () => {
  test("the same number in two leagues is normal: both are found, nobody else before them", async () => {
    expect((await names("27")).slice(0, 2).sort()).toEqual(["Brine Crusher", "Max Impact"]);
    expect(await names("27")).toContain("Petra Fied");
  });

  test("07 is not 7, but finds it second", async () => {
    expect((await names("07")).slice(0, 2)).toEqual(["Zoë O'Hara", "Ångström Unit"]);
    expect((await names("7")).slice(0, 2)).toEqual(["Ångström Unit", "Zoë O'Hara"]);
  });

  test("a bib comes before a number", async () => {
    const [, , , , , conda = 0] = ids;
    await made.as("check-in").checkIn.admit(answersOf(conda, { bib: 27 }));
    expect((await names("27"))[0]).toBe("Anna Conda");
  });
});

test("nothing typed: those still expected, by name", async () => {
  const found = await made.as("check-in").checkIn.search({ query: " ", limit: 3 });
  expect(found.people.map(({ name }) => name)).toEqual(["Ångström Unit", "Anna Conda", "Anna Log"]);
  expect(found.more).toBe(4);
});

test("of equal matches, those on the list come first; others are found too", async () => {
  addPeople(made, [{ league: "Away", name: "Max Impact" }], null);
  const found = await made.as("check-in").checkIn.search({ query: "max impact" });
  expect(found.people.map(({ name, state }) => [name, state])).toEqual([
    ["Max Impact", "expected"],
    ["Max Impact", null],
  ]);
});

test("what changes is found at once: a new person, a new name, another store", async () => {
  expect(await names("newcomer")).toEqual([]);
  addPeople(made, [{ league: "Away", name: "Newcomer" }], null);
  expect(await names("newcomer")).toEqual(["Newcomer"]);
  await made.as("organiser").day.openDemo();
  expect(await names("newcomer")).toEqual([]);
});

test("among 5,000 athletes a keystroke takes less than 50 ms", async () => {
  const random = seeded(7);
  const syllables = ["ra", "mo", "ti", "ska", "del", "bri", "no", "vex", "lum", "qui", "zar", "fen"];
  const word = () =>
    Array.from({ length: 3 }, () => syllables[Math.floor(random() * syllables.length)]).join("");
  const crowd = Array.from({ length: 5000 }, (_, index) => ({
    league: `League ${index % 40}`,
    name: `${word()} ${word()}`,
    number: String(Math.floor(index / 40)),
  }));
  const [first = 0] = addPeople(made, crowd, null);
  await names("warm");
  const times: number[] = [];
  for (const query of ["r", "ra", "ram", "ramo", "ramoti sk", "12", "999", "leage 12", "skavxlum"]) {
    times.push(await ordinaryMs(() => names(query)));
  }
  await made.as("check-in").checkIn.admit(answersOf(first));
  const after = await ordinaryMs(() => names("ramo"));
  expect(after).toBeLessThan(50);
  times.sort((a, b) => a - b);
  console.log(
    `search among 5,000: median ${times[4]?.toFixed(1)} ms, longest ${times.at(-1)?.toFixed(1)} ms, after a check-in ${after.toFixed(1)} ms`,
  );
  expect(times[4]).toBeLessThan(50);
});
