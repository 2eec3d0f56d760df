import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import type { Answers } from "../../app/answers.ts";

export type Papers = Answers["papers"]["people"];
export type PaperPerson = Papers["people"][number];

/** What is printed: record sheets of one test or of all five, bib numbers, or badges. */
export type What = TestCode | "records" | "bibs" | "badges";
export const whats: readonly What[] = ["records", ...testCodes, "bibs", "badges"];

/** For whom it is printed. `bibs`: numbers from one to another, whoever has them. */
export type Who =
  | { readonly kind: "all" | "here" | "expected" }
  | { readonly kind: "league"; readonly leagueId: number }
  | { readonly kind: "bibs"; readonly from: number; readonly to: number };

/** Most bib numbers of one print. */
export const mostBibs = 500;
const largestBib = 9999;

/** The choice as it stands in an address: `here`, `league-3`, `bibs-1-40`. */
export function nameOf(who: Who): string {
  switch (who.kind) {
    case "league":
      return `league-${who.leagueId}`;
    case "bibs":
      return `bibs-${who.from}-${who.to}`;
    default:
      return who.kind;
  }
}

/** The choice that an address names; null when it names none. */
export function whoNamed(name: string): Who | null {
  if (name === "all" || name === "here" || name === "expected") return { kind: name };
  const league = /^league-(?<id>\d{1,9})$/.exec(name)?.groups?.id;
  if (league !== undefined) return { kind: "league", leagueId: Number(league) };
  const { from, to } = /^bibs-(?<from>\d{1,4})-(?<to>\d{1,4})$/.exec(name)?.groups ?? {};
  return from === undefined || to === undefined ? null : bibsOf(Number(from), Number(to));
}

/** Bib numbers from one to another; null for what is no such stretch, or too long a one. */
export function bibsOf(from: number, to: number): Who | null {
  const isStretch = from >= 1 && from <= to && to <= largestBib && to - from < mostBibs;
  return isStretch ? { kind: "bibs", from, to } : null;
}

/** Everybody who is chosen, in the order of print. */
export function chosenOf({ people }: Papers, who: Who): readonly PaperPerson[] {
  switch (who.kind) {
    case "all":
      return people;
    case "here":
      return people.filter(({ state }) => state === "testing");
    case "expected":
      return people.filter(({ state }) => state === "expected");
    case "league":
      return people.filter(({ leagueId }) => leagueId === who.leagueId);
    case "bibs":
      return people.filter(({ bib }) => bib !== null && bib >= who.from && bib <= who.to);
  }
}

/** One bib number to print, with the league of whoever wears it already. */
export interface BibToPrint {
  readonly bib: number;
  readonly league: string;
}

/** The bibs of a choice: every number of a stretch, worn or not; else those that are worn. */
export function bibsToPrint(papers: Papers, who: Who): BibToPrint[] {
  const chosen = chosenOf(papers, who).flatMap(({ bib, league }) => (bib === null ? [] : { bib, league }));
  if (who.kind !== "bibs") return chosen;
  const worn = new Map(chosen.map(({ bib, league }) => [bib, league]));
  return Array.from({ length: who.to - who.from + 1 }, (_none, index) => {
    const bib = who.from + index;
    return { bib, league: worn.get(bib) ?? "" };
  });
}
