import { setImmediate } from "node:timers/promises";
import { isoDate } from "../api/door/calendar.ts";
import type { Desk } from "../api/door/desk.ts";
import type { rehearsalSteps } from "../api/door/rehearsal-shapes.ts";
import { say } from "../api/door/words.ts";
import { appRouter } from "../api/router.ts";
import { sentence } from "../domain/words.ts";
import { type DayProtocol, dayById } from "../store/tables/days.ts";
import { type Bundle, makeBundle } from "./bundle.ts";
import { type Foreseen, foreseen } from "./foreseen.ts";
import { inventedResults } from "./invented.ts";
import { type OwnedMark, ownedMarks } from "./marks.ts";
import { type Organiser, type RehearsedSheet, type TakenSheet, takeIn, tryToTakeIn } from "./sheets.ts";

type Admitted = Awaited<ReturnType<Organiser["checkIn"]["admitAll"]>>;
type Board = Awaited<ReturnType<Organiser["board"]["view"]>>;

/** The sheets of a rehearsal. */
export interface Sheets {
  /** One at least: a day has a roster of each league. */
  readonly rosters: readonly RehearsedSheet[];
  readonly past: RehearsedSheet | null;
  /** Null: results are invented, so that a whole day is held. */
  readonly results: RehearsedSheet | null;
}

/** Settings of a day that differ from the standard rules. */
export interface HeldHow {
  readonly restMinutes: number;
  readonly protocols: readonly DayProtocol[];
}

/** The result of a whole rehearsed day. */
export interface Rehearsed {
  readonly date: string;
  /** Sheets in the order of import. */
  readonly sheets: readonly TakenSheet[];
  readonly admitted: Admitted;
  readonly marks: readonly OwnedMark[];
  readonly board: Board;
  readonly bundle: Bundle;
  /** Null where nobody tests. */
  readonly foreseen: Foreseen | null;
}

/** The next step, `done` of `total` steps. */
export interface StepsDone {
  readonly step: (typeof rehearsalSteps)[number];
  readonly done: number;
  readonly total: number;
}

/**
 * Holds a day on an empty desk by the procedures that the windows call: sheets, check-in, attempts, closing, and then
 * the big screen and the bundle. Yields each step before it begins.
 * @throws UnusableSheet when no roster can be used: without one nothing can.
 */
export async function* rehearseDay(
  desk: Desk,
  { rosters, past, results }: Sheets,
  how: HeldHow | null = null,
): AsyncGenerator<StepsDone, Rehearsed> {
  const organiser = appRouter.createCaller({ who: "organiser", desk });
  const next = stepper(4 + Number(past !== null));
  const dayId = await openDay(organiser, isoDate(desk.now()), how);
  yield* next("roster");
  const sheets = await takeRosters(organiser, rosters);
  if (past !== null) {
    yield* next("past");
    sheets.push(await tryToTakeIn(organiser, "past", past));
  }
  yield* next("checkIn");
  const admitted = await organiser.checkIn.admitAll();
  yield* next("results");
  sheets.push(
    results === null
      ? { ...(await takeIn(organiser, "results", inventedResults(desk.store.db, dayId))), invented: true }
      : await tryToTakeIn(organiser, "results", results),
  );
  yield* next("end");
  const end = await foreseen(desk, dayId);
  await organiser.day.close({ dayId });
  return {
    date: isoDate(desk.now()),
    sheets,
    admitted,
    foreseen: end,
    ...(await outcomeOf(desk, organiser, dayId)),
  };
}

/** Imports one roster after another. @throws UnusableSheet of the first, when none can be used */
async function takeRosters(organiser: Organiser, rosters: readonly RehearsedSheet[]): Promise<TakenSheet[]> {
  const [first, ...others] = rosters;
  if (first === undefined) throw new Error("A rehearsal needs a roster.");
  if (others.length === 0) return [await takeIn(organiser, "roster", first)];
  const sheets: TakenSheet[] = [];
  for (const roster of rosters) sheets.push(await tryToTakeIn(organiser, "roster", roster));
  if (sheets.every(({ refused }) => refused !== null)) await takeIn(organiser, "roster", first);
  return sheets;
}

/** Yields a step, and lets the code that shows it run. */
function stepper(total: number): (step: StepsDone["step"]) => AsyncGenerator<StepsDone, void> {
  let done = 0;
  return async function* next(step) {
    yield { step, done, total };
    done += 1;
    await setImmediate();
  };
}

async function openDay(organiser: Organiser, date: string, how: HeldHow | null): Promise<number> {
  const held = how !== null && {
    restMinutes: how.restMinutes,
    parameters: Object.fromEntries(how.protocols.map(({ test, parameters }) => [test, parameters])),
  };
  await organiser.day.create({ date, title: say(sentence("rehearse.dayTitle")), ...held });
  return (await organiser.day.open()).dayId;
}

async function outcomeOf(desk: Desk, organiser: Organiser, dayId: number) {
  const day = dayById(desk.store.db, dayId);
  if (day === undefined) throw new Error("The rehearsed day is not in its store.");
  return {
    marks: ownedMarks(desk.store.db, day),
    board: await appRouter.createCaller({ who: "board", desk }).board.view(),
    bundle: await makeBundle(organiser, dayId),
  };
}
