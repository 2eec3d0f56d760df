import { isoDate } from "../api/calendar.ts";
import type { Desk } from "../api/desk.ts";
import { appRouter } from "../api/router.ts";
import { say } from "../api/words.ts";
import { sentence } from "../domain/words.ts";
import { dayById } from "../store/days.ts";
import type { Wanted } from "./arguments.ts";
import { type Bundle, makeBundle } from "./bundle.ts";
import { type OwnedMark, ownedMarks } from "./marks.ts";
import { bring, type Organiser, type TakenSheet, take } from "./sheets.ts";

type Admitted = Awaited<ReturnType<Organiser["checkIn"]["admitAll"]>>;
type Board = Awaited<ReturnType<Organiser["board"]["view"]>>;

/** A whole day, as it went. */
export interface Rehearsed {
  readonly date: string;
  /** In the order in which they were taken in. */
  readonly sheets: readonly TakenSheet[];
  readonly admitted: Admitted;
  readonly marks: readonly OwnedMark[];
  readonly board: Board;
  readonly bundle: Bundle;
}

/**
 * Holds a day on an empty desk by the procedures that the windows call: sheets in, everybody in, every attempt in,
 * closed, and what then hangs on the wall and would leave the room.
 * @throws UnusableSheet when a sheet as a whole can't be taken.
 */
export async function rehearseDay(desk: Desk, wanted: Wanted): Promise<Rehearsed> {
  const organiser = appRouter.createCaller({ who: "organiser", desk });
  const date = isoDate(desk.now());
  const roster = await bring(organiser, "roster", wanted.roster);
  const past = wanted.past === null ? null : await bring(organiser, "past", wanted.past);
  const results = await bring(organiser, "results", wanted.results);
  await organiser.day.create({ date, title: say(sentence("rehearse.dayTitle")) });
  const { dayId } = await organiser.day.open();
  const sheets = [await take(organiser, roster)];
  if (past !== null) sheets.push(await take(organiser, past));
  const admitted = await organiser.checkIn.admitAll();
  sheets.push(await take(organiser, results));
  await organiser.day.close({ dayId });
  const day = dayById(desk.store.db, dayId);
  if (day === undefined) throw new Error("The rehearsed day is not in its store.");
  return {
    date,
    sheets,
    admitted,
    marks: ownedMarks(desk.store.db, day),
    board: await appRouter.createCaller({ who: "board", desk }).board.view(),
    bundle: await makeBundle(organiser, dayId),
  };
}
