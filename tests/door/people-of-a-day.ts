import { addAthlete, leagueNamed, type NewAthlete } from "../../electron/store/tables/athletes.ts";
import { expectEntrant } from "../../electron/store/tables/entrants.ts";
import type { TestDesk } from "./desk.ts";

/** An invented athlete; whatever is not given is as a roster sheet without the column would leave it. */
export interface Invented extends Partial<Omit<NewAthlete, "leagueId">> {
  readonly league: string;
  readonly name: string;
}

/** Puts athletes into the store, and on the list of `dayId` when it is given; returns their ids in order. */
export function addPeople({ desk }: TestDesk, people: readonly Invented[], dayId: number | null): number[] {
  return desk.store.write(["people", "entrants"], (db) =>
    people.map(({ league, ...person }) => {
      const id = addAthlete(db, {
        leagueId: leagueNamed(db, league),
        number: "",
        birthYear: null,
        category: null,
        guardianConsent: false,
        board: "bib",
        share: false,
        asked: false,
        ...person,
      });
      if (dayId !== null) expectEntrant(db, dayId, id, desk.now().toISOString());
      return id;
    }),
  );
}

/** Plans and opens a day on 14 November 2026; returns its id. */
export async function openDay({ as }: TestDesk): Promise<number> {
  const organiser = as("organiser");
  await organiser.day.create({ date: "2026-11-14", title: "Autumn testing day" });
  return (await organiser.day.open()).dayId;
}

type Admit = Parameters<ReturnType<TestDesk["as"]>["checkIn"]["admit"]>[0];

/** A check-in of somebody who answered every question in the plainest way. */
export function answersOf(athleteId: number, differing: Partial<Admit> = {}): Admit {
  const plain = { leaveOut: [], board: "bib" as const, share: false, guardianConsent: false, by: "QA" };
  return { athleteId, bib: null, ...plain, ...differing };
}
