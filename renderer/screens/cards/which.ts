import type { Answers, Questions } from "../../app/answers.ts";

type Inputs = Questions["cards"];
type Outputs = Answers["cards"];

export type WhichCards = Inputs["list"]["which"];
export type Cards = Outputs["list"];
export type CardData = Cards["cards"][number];
export type CardTest = CardData["tests"][number];
export type People = Outputs["people"];
export type CardPerson = People["people"][number];

/** Writes a selection as in an address: `all`, `league-3`, `athlete-12`. */
export function nameOf(which: WhichCards): string {
  switch (which.kind) {
    case "all":
      return "all";
    case "league":
      return `league-${which.leagueId}`;
    case "athlete":
      return `athlete-${which.athleteId}`;
  }
}

/** Parses a selection in an address; null if it is none. */
export function whichNamed(name: string): WhichCards | null {
  if (name === "all") return { kind: "all" };
  const [, kind, digits] = /^(league|athlete)-(\d{1,9})$/.exec(name) ?? [];
  if (kind === undefined) return null;
  const id = Number(digits);
  return kind === "league" ? { kind: "league", leagueId: id } : { kind: "athlete", athleteId: id };
}

/** Returns the path of a selection; `current` is the day at hand or the last closed one. */
export function pathOf(day: number | "current", which: WhichCards): string {
  return `/cards/${day}/${nameOf(which)}`;
}

/** Returns the selected athletes in the order of print. */
export function chosenOf({ people }: People, which: WhichCards): readonly CardPerson[] {
  switch (which.kind) {
    case "all":
      return people;
    case "league":
      return people.filter(({ leagueId }) => leagueId === which.leagueId);
    case "athlete":
      return people.filter(({ athleteId }) => athleteId === which.athleteId);
  }
}
