import { expect, test } from "vitest";
import { type Page, pagesOf } from "../../../renderer/screens/papers/pages.ts";
import {
  bibsOf,
  bibsToPrint,
  nameOf,
  type PaperPerson,
  type Papers,
  type Who,
  whoNamed,
} from "../../../renderer/screens/papers/which.ts";

function person(athleteId: number, more: Partial<PaperPerson> = {}): PaperPerson {
  const plain = { bib: athleteId, name: null, number: "", league: "Foundry Town", leagueId: 1, skips: [] };
  return { athleteId, ...plain, state: "testing", code: String(athleteId), ...more };
}

const papersOf = (people: PaperPerson[]): Papers => ({ people, leagues: [] });
const crowd = (count: number) => papersOf(Array.from({ length: count }, (_none, index) => person(index + 1)));
const records = (pages: readonly Page[]) => pages.flatMap((page) => (page.kind === "record" ? [page] : []));
const everybody: Who = { kind: "all" };

test("a choice of people is what its address names", () => {
  const whos: Who[] = [everybody, { kind: "here" }, { kind: "expected" }, { kind: "league", leagueId: 3 }];
  for (const who of [...whos, { kind: "bibs", from: 1, to: 40 } as const])
    expect(whoNamed(nameOf(who))).toEqual(who);
  for (const name of ["", "nobody", "bibs-9-2", "bibs-0-5", "bibs-1-501", "league-x"])
    expect(whoNamed(name), name).toBeNull();
  expect(bibsOf(1, 500)).not.toBeNull();
  expect(bibsOf(9990, 10_000)).toBeNull();
});

test("everybody has a line, in order, at least five lines are empty, and pages know how many they are", () => {
  for (const count of [0, 3, 17, 18, 22, 41, 200]) {
    const pages = records(pagesOf(crowd(count), "core", everybody, "a4"));
    const lines = pages.flatMap((page) => page.lines);
    expect(lines.filter((line) => line !== null).map((line) => line.bib)).toEqual(
      Array.from({ length: count }, (_none, index) => index + 1),
    );
    expect(lines.length - count).toBeGreaterThanOrEqual(5);
    expect(pages.every((page) => page.lines.length === 22)).toBe(true);
    expect(pages.map(({ page, pages: of }) => [page, of])).toEqual(
      pages.map((_page, index) => [index + 1, pages.length]),
    );
  }
});

test("whoever skips a test is not on its sheet, nor whom no line could name", () => {
  const papers = papersOf([
    person(1),
    person(2, { skips: ["core"] }),
    person(3, { bib: null, number: "07" }),
    person(4, { bib: null }),
    person(5, { bib: null, name: "Ash Velvet" }),
  ]);
  const onSheet = (test: "core" | "agility") =>
    records(pagesOf(papers, test, everybody, "a4")).flatMap(({ lines }) =>
      lines.flatMap((line) => line?.athleteId ?? []),
    );
  expect(onSheet("core")).toEqual([1, 3, 5]);
  expect(onSheet("agility")).toEqual([1, 2, 3, 5]);
});

test("all five record sheets come test by test", () => {
  const pages = records(pagesOf(crowd(30), "records", everybody, "letter"));
  expect(pages.map(({ test: code, page }) => `${code} ${page}`)).toEqual(
    ["push-up", "agility", "vertical", "core", "endurance"].flatMap((code) => [`${code} 1`, `${code} 2`]),
  );
});

test("bibs from one number to another are all printed, with the league of whoever wears one", () => {
  const papers = papersOf([person(2, { league: "Quarry Lane" })]);
  const who: Who = { kind: "bibs", from: 1, to: 3 };
  expect(bibsToPrint(papers, who)).toEqual([
    { bib: 1, league: "" },
    { bib: 2, league: "Quarry Lane" },
    { bib: 3, league: "" },
  ]);
  expect(pagesOf(papers, "bibs", who, "a4")).toHaveLength(2);
  expect(pagesOf(papers, "bibs", { kind: "all" }, "a4")).toHaveLength(1);
});
