import { expect, test } from "vitest";
import { testDesk } from "./desk.ts";
import { addPeople, answersOf, openDay } from "./people-of-a-day.ts";

const people = [
  { league: "Quarry Lane", name: "Ash Velvet", number: "07", board: "name" },
  { league: "Foundry Town", name: "Briar Knox", number: "8", board: "bib" },
  { league: "Foundry Town", name: "Cinder Rue", number: "", board: "hidden" },
  { league: "Foundry Town", name: "Dell Grant", number: "12", board: "name" },
] as const;

async function paperDay() {
  const desk = testDesk();
  const dayId = await openDay(desk);
  const ids = addPeople(desk, people, dayId);
  const [ash = 0, briar = 0, cinder = 0, dell = 0] = ids;
  const { checkIn } = desk.as("check-in");
  await checkIn.admit(answersOf(briar, { bib: 3, leaveOut: ["core"] }));
  await checkIn.admit(answersOf(cinder, { bib: 1, board: "hidden" }));
  return { ...desk, ids: { ash, briar, cinder, dell }, checkIn };
}

test("papers have bibs first, and the name of nobody who did not agree to it", async () => {
  const { as, ids } = await paperDay();
  const { people: told, leagues } = await as("organiser").papers.people();
  expect(told.map(({ bib, name, number, league, state }) => [bib, name, number, league, state])).toEqual([
    [1, null, "", "Foundry Town", "testing"],
    [3, null, "8", "Foundry Town", "testing"],
    [null, "Dell Grant", "12", "Foundry Town", "expected"],
    [null, "Ash Velvet", "07", "Quarry Lane", "expected"],
  ]);
  expect(told.map(({ code }) => code)).toEqual(["1", "3", `TL${ids.dell}`, `TL${ids.ash}`]);
  expect(told.map(({ skips }) => skips)).toEqual([[], ["core"], [], []]);
  expect(leagues.map(({ name, count }) => [name, count])).toEqual([
    ["Foundry Town", 3],
    ["Quarry Lane", 1],
  ]);
  expect(JSON.stringify(told)).not.toMatch(/Briar|Cinder/);
});

test("nobody who withdrew or is not here to test is on a paper", async () => {
  const { as, ids, checkIn } = await paperDay();
  await checkIn.withdraw({ athleteId: ids.briar });
  await checkIn.noShow({ athleteId: ids.ash });
  const { people: told } = await as("organiser").papers.people();
  expect(told.map(({ athleteId }) => athleteId)).toEqual([ids.cinder, ids.dell]);
});

test("a badge's code finds its athlete alone at check-in, in either case, and nobody where there is none", async () => {
  const { ids, checkIn } = await paperDay();
  const first = async (query: string) => (await checkIn.search({ query })).people[0]?.athleteId;
  expect(await first(`TL${ids.ash}`)).toBe(ids.ash);
  expect(await first(`tl${ids.dell}`)).toBe(ids.dell);
  expect(await first("3")).toBe(ids.briar);
  expect((await checkIn.search({ query: "TL99999" })).people).toEqual([]);
});

test("at a station a badge without a bib is nobody's", async () => {
  const { as, ids } = await paperDay();
  const found = as("station").station.find({ test: "core", bib: `TL${ids.ash}`, lengths: "cm" });
  await expect(found).rejects.toThrow();
});
