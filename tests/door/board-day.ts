import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { defaultParameters } from "../../electron/domain/tests/registry.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { type TestDesk, testDesk } from "./desk.ts";
import { addPeople, type Invented, openDay } from "./people-of-a-day.ts";
import { type Entry, entry, setState, ticket } from "./station-day.ts";

type Caller = ReturnType<TestDesk["as"]>;
export type View = Awaited<ReturnType<Caller["board"]["view"]>>;

export interface BoardDay extends TestDesk {
  readonly dayId: number;
  /** Ids in the order of the people given; bibs are 1, 2, 3 … in the same order. */
  readonly ids: readonly number[];
  /** What the hall's window is told now. */
  view(): Promise<View>;
  /** Enters plain attempts of one test for a bib. */
  enter(bib: number, test: TestCode, ...seen: unknown[]): Promise<void>;
  /** A mark of a bib from the spring, in grains. */
  past(bib: number, test: TestCode, value: number, date?: string): void;
  consent(bib: number, board: "name" | "bib" | "hidden"): Promise<void>;
}

/** An open day on which all of these people have checked in. */
export async function boardDay(
  people: readonly Invented[],
  file?: string,
  more?: Parameters<typeof testDesk>[2],
): Promise<BoardDay> {
  const desk = testDesk(file, undefined, more);
  const dayId = await openDay(desk);
  const ids = addPeople(desk, people, dayId);
  for (const [index, athleteId] of ids.entries()) setState(desk, dayId, athleteId, "testing", index + 1);
  const idOf = (bib: number) => ids[bib - 1] ?? 0;
  return {
    ...{ ...desk, dayId, ids },
    view: () => desk.as("board").board.view(),
    async enter(bib, test, ...seen) {
      const more: Partial<Entry> = { attempts: seen.map(ticket), sure: true };
      await desk.as("station").station.enter(entry(idOf(bib), test, null, more));
    },
    past: (bib, test, value, date = "2026-04-11") => addPast(desk, idOf(bib), test, value, date),
    async consent(bib, board) {
      await desk.as("check-in").people.setConsent({ athleteId: idOf(bib), board, share: false });
    },
  };
}

function addPast({ desk }: TestDesk, athleteId: number, test: TestCode, value: number, date: string): void {
  const variant = test === "push-up" ? "full" : "";
  const name = fingerprint(test, variant, defaultParameters(test));
  desk.store.write(["people"], (db) =>
    addPastMark(db, { athleteId, fingerprint: name, date, test, variant, value }),
  );
}
