import { describe, expect, test } from "vitest";
import { usualLeague, usualSettings } from "../../../electron/domain/plan/settings.ts";
import { readClock } from "../../../renderer/screens/plan/clock.ts";
import {
  arrivingFrom,
  readCount,
  readLeague,
  readSeconds,
  readTime,
  settingsOf,
  typedSeconds,
} from "../../../renderer/screens/plan/given/typed.ts";
import type { Planned } from "../../../renderer/screens/plan/types.ts";

test.each([
  ["9:30", "09:30"],
  ["9.30", "09:30"],
  ["0930", "09:30"],
  ["930", "09:30"],
  ["9", "09:00"],
  [" 14 h ", "14:00"],
  ["14h05", "14:05"],
  ["24:00", null],
  ["9:60", null],
  ["9:3", null],
  ["noon", null],
  ["", null],
])("the time of day %j is read as %j", (typed, read) => {
  expect(readClock(typed)).toBe(read);
});

test("times of turns are read and written in minutes and seconds; an empty one is nobody's word", () => {
  expect(readSeconds("2:30")).toBe(150);
  expect(readSeconds("75")).toBe(75);
  expect(readSeconds(" ")).toBeNull();
  expect(readSeconds("two")).toBeUndefined();
  expect(typedSeconds(150)).toBe("2:30");
});

test("a station's time that stayed as it was shown is still that of earlier days, or assumed", () => {
  const assumed = { median: 72.4, sigma: 0.3, from: "assumed", turns: 0 } as const;
  expect(readTime("1:12", assumed)).toBeNull();
  expect(readTime("1:15", assumed)).toBe(75);
  expect(readTime("1:12", { ...assumed, from: "typed" })).toBe(72);
  expect(readTime("", { ...assumed, from: "typed" })).toBeNull();
});

test("a number outside its range is none, and neither is a broken one", () => {
  expect(readCount("12", 1, 12)).toBe(12);
  expect(["0", "13", "1.5", "-1", ""].map((typed) => readCount(typed, 1, 12))).toEqual(Array(5).fill(null));
});

describe("a league as it is typed", () => {
  const typed = { league: "Tin Harbour", number: "14", from: "9", until: "9.30", comes: "90", listed: 14 };

  test("comes with its list where its number is that of the list, or none", () => {
    const read = { league: "Tin Harbour", number: null, from: "09:00", until: "09:30", comes: 0.9 };
    expect(readLeague(typed)).toEqual(read);
    expect(readLeague({ ...typed, number: " " })).toEqual(read);
    expect(readLeague({ ...typed, number: "15" })?.number).toBe(15);
  });

  test("needs a number and a name where it is on no list", () => {
    expect(readLeague({ ...typed, listed: null, number: "" })).toBeNull();
    expect(readLeague({ ...typed, listed: null, number: "20" })?.number).toBe(20);
    expect(readLeague({ ...typed, listed: null, number: "20", league: " " })).toBeNull();
    expect(readLeague({ ...typed, comes: "101" })).toBeNull();
  });
});

test("a league that arrives all together goes on doing so when it arrives later", () => {
  const typed = {
    league: "Tin Harbour",
    number: "12",
    from: "09:00",
    until: "09:00",
    comes: "90",
    listed: null,
  };
  expect(arrivingFrom(typed, "9:30")).toEqual({ ...typed, from: "9:30", until: "9:30" });
  expect(arrivingFrom({ ...typed, until: "10:00" }, "9:30")).toMatchObject({ from: "9:30", until: "10:00" });
});

test("leagues of which nothing was said are not saved, so that they follow the beginning", () => {
  const said = { ...usualLeague("Gravel Moon", "09:00"), number: 20, listed: 8 };
  const planned = {
    ...usualSettings(),
    leagues: [said, { ...usualLeague("Tin Harbour", "09:00"), listed: 14 }],
  } as unknown as Planned;
  expect(settingsOf(planned).leagues.map(({ league }) => league)).toEqual(["Gravel Moon"]);
});
