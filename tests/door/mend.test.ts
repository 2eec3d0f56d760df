import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";
import { addPeople, answersOf, openDay } from "./people-of-a-day.ts";
import { entry, past, reps, stationDay } from "./station-day.ts";

let made: TestDesk;
let dayId = 0;
beforeEach(async () => {
  made = testDesk();
  dayId = await openDay(made);
});
afterEach(() => {
  expect(made.faults).toEqual([]);
  made.desk.close();
});

const table = () => made.as("organiser").people;
const who = { name: "Ada Rill", number: "07", league: "Alder", birthYear: 1991, category: "open" } as const;

async function known(athleteId: number) {
  const { name, number, league, birthYear, category } = await table().get({ athleteId });
  return { name, number, league, birthYear, category };
}

describe("correcting who somebody is", () => {
  test("is found under the new name at once, and the mistyped league goes with its last athlete", async () => {
    const [ada = 0] = addPeople(made, [{ league: "Aldr", name: "Adda Ril", number: "7" }], dayId);
    expect((await table().list({ query: "adda" })).total).toBe(1);
    await table().mend({ athleteId: ada, ...who });
    expect(await known(ada)).toEqual(who);
    expect((await table().list({ query: "adda ril" })).people.map(({ name }) => name)).toEqual(["Ada Rill"]);
    expect((await table().list({})).leagues.map(({ name }) => name)).toEqual(["Alder"]);
    await table().mend({ athleteId: ada, ...who });
    expect(await known(ada)).toEqual(who);
  });

  test("keeps what they agreed to, their bib, and what was measured", async () => {
    const day = await stationDay();
    await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
    const door = day.as("organiser").people;
    await door.setConsent({ athleteId: day.idOf(1), board: "name", share: true });
    const before = await door.get({ athleteId: day.idOf(1) });
    await door.mend({ athleteId: day.idOf(1), ...who, number: "" });
    const after = await door.get({ athleteId: day.idOf(1) });
    const { name, number, league, birthYear, category } = after;
    expect({ ...before, name, number, league, birthYear, category, attempts: [] }).toEqual({
      ...{ ...after, attempts: [] },
    });
    expect(after.marks).toHaveLength(1);
    expect(JSON.stringify(await day.as("board").board.view())).toContain("Ada Rill");
    day.desk.close();
  });

  test("a number or a bare name that is another athlete's is told", async () => {
    const people = [
      { league: "Alder", name: "Bo Crank", number: "07" },
      { league: "Alder", name: "Cy Loop" },
    ];
    const [ada = 0] = addPeople(made, [{ league: "Alder", name: "Ada", number: "9" }, ...people], dayId);
    expect(await refusalOf(table().mend({ athleteId: ada, ...who, league: "ALDER" }))).toEqual({
      key: "mend.numberTaken",
      values: { number: "07", name: "Bo Crank", league: "Alder" },
    });
    const bare = { athleteId: ada, ...who, name: "cy  loop", number: "" };
    expect(await refusalOf(table().mend(bare))).toEqual({
      key: "mend.nameTaken",
      values: { name: "Cy Loop", league: "Alder" },
    });
    expect(await known(ada)).toMatchObject({ name: "Ada", number: "9" });
    // 07 is not 7, and another league's 07 is somebody else's.
    await table().mend({ athleteId: ada, ...who, number: "7" });
    await table().mend({ athleteId: ada, ...who, league: "Birch" });
  });

  test.each([
    [{ name: "  " }, "checkIn.nameMissing"],
    [{ league: "" }, "checkIn.leagueMissing"],
    [{ number: "12a" }, "checkIn.badNumber"],
    [{ number: "12345" }, "checkIn.badNumber"],
    [{ birthYear: 2026 }, "checkIn.badBirthYear"],
    [{ name: "a".repeat(81) }, "sheets.row.tooLong"],
  ])("what can't be read is refused with a sentence, and nothing changes: %j", async (wrong, key) => {
    const [ada = 0] = addPeople(made, [{ league: "Alder", name: "Ada", number: "9" }], dayId);
    const before = await known(ada);
    expect((await refusalOf(table().mend({ athleteId: ada, ...who, ...wrong }))).key).toBe(key);
    expect(await known(ada)).toEqual(before);
  });

  test.each(["Robert'); DROP TABLE athlete;--", "=cmd()", "<img src=x onerror=alert(1)>", "👟‮‍", "\u0000x"])(
    "any name is kept as it is: %j",
    async (name) => {
      const [ada = 0] = addPeople(made, [{ league: "Alder", name: "Ada", number: "9" }], dayId);
      await table().mend({ athleteId: ada, ...who, name });
      expect((await known(ada)).name).toBe(name.trim());
      expect((await table().list({})).total).toBe(1);
    },
  );

  test("is the organiser's alone", async () => {
    for (const role of ["check-in", "station", "board"] as const) {
      const call = made.as(role).people.mend({ athleteId: 1, ...who });
      await expect(call).rejects.toMatchObject({ code: "FORBIDDEN" });
      const removal = made.as(role).people.remove({ athleteId: 1 });
      await expect(removal).rejects.toMatchObject({ code: "FORBIDDEN" });
    }
  });
});

describe("removing somebody typed by mistake", () => {
  test("gives back the bib, leaves no trace in lists, and twice is once", async () => {
    const { athleteId: _, ...answers } = answersOf(0);
    const typed = { league: "Aldr", name: "Adda", number: "", birthYear: null };
    const { athleteId } = await made.as("check-in").checkIn.walkUp({ ...answers, ...typed });
    await table().remove({ athleteId });
    await table().remove({ athleteId });
    expect((await table().list({})).total).toBe(0);
    expect((await table().list({ query: "adda" })).total).toBe(0);
    expect((await table().list({})).leagues).toEqual([]);
    expect((await made.as("check-in").checkIn.counts()).freeBib).toBe(1);
    expect(await made.as("organiser").people.erasures()).toEqual([]);
  });

  test("is refused once something was seen of them, today or before, also where it is void", async () => {
    const day = await stationDay();
    const door = day.as("organiser").people;
    const first = entry(day.idOf(1), "push-up", reps(20));
    await day.station.enter(first);
    const attemptId = first.attempts[0]?.id ?? "";
    await day.station.void({ attemptId, reason: "wrong lane", by: "QA" });
    past(day, 2, "core", 90, "2026-02-01");
    for (const bib of [1, 2]) {
      expect((await refusalOf(door.remove({ athleteId: day.idOf(bib) }))).key).toBe("remove.measured");
    }
    await door.remove({ athleteId: day.idOf(3) });
    await day.as("organiser").day.close({ dayId: day.dayId });
    expect((await refusalOf(door.remove({ athleteId: day.idOf(4) }))).key).toBe("remove.earlier");
    expect((await door.list({})).total).toBe(5);
    day.desk.close();
  });
});
