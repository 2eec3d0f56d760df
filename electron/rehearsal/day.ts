import { isoDate } from "../api/calendar.ts";
import type { Desk } from "../api/desk.ts";
import { appRouter } from "../api/router.ts";
import { say } from "../api/words.ts";
import { sentence } from "../domain/words.ts";
import { dayById } from "../store/days.ts";
import type { Wanted } from "./arguments.ts";
import { type Bundle, makeBundle } from "./bundle.ts";
import { type OwnedMark, ownedMarks } from "./marks.ts";
import { type Organiser, requireFile, type TakenSheet, takeIn, tryToTakeIn } from "./sheets.ts";

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
 * @throws UnusableSheet when a file is missing, or when the roster can't be used: without it nothing can.
 */
export async function rehearseDay(desk: Desk, wanted: Wanted): Promise<Rehearsed> {
  const organiser = appRouter.createCaller({ who: "organiser", desk });
  const date = isoDate(desk.now());
  const { roster, past, results } = wanted;
  for (const path of [roster, results, ...(past === null ? [] : [past])]) await requireFile(path);
  await organiser.day.create({ date, title: say(sentence("rehearse.dayTitle")) });
  const { dayId } = await organiser.day.open();
  const sheets = [await takeIn(organiser, "roster", roster)];
  if (past !== null) sheets.push(await tryToTakeIn(organiser, "past", past));
  const admitted = await organiser.checkIn.admitAll();
  sheets.push(await tryToTakeIn(organiser, "results", results));
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
