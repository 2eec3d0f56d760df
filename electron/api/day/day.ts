import { z } from "zod";
import { heldOn } from "../../domain/day/dates.ts";
import { Refusal } from "../../domain/refusal.ts";
import { protocolOf, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { addDayEvent, dayEvents } from "../../store/tables/day-events.ts";
import {
  addDay,
  allDays,
  type Day,
  type DayProtocol,
  dayAtHand,
  dayById,
  setDayState,
} from "../../store/tables/days.ts";
import { requireDay } from "../door/at-hand.ts";
import { isoDate } from "../door/calendar.ts";
import { allow, router } from "../door/trpc.ts";
import { requireNobodyGoing } from "../heat/over.ts";
import { forecast } from "../plan/forecast.ts";
import { leaveDemo, openDemo } from "./demo.ts";
import { lineOf } from "./lines.ts";
import { beforeClosing, floor, overview } from "./overview.ts";
import {
  changePlan,
  discard,
  history,
  listAgain,
  planShape,
  reopen,
  requireNearOrSure,
  sureSchema,
} from "./plan.ts";
import { protocols, readParameters, restSchema, setProtocol, setRest } from "./protocols.ts";

const daySchema = z.object({
  id: z.int(),
  date: z.string(),
  title: z.string(),
  state: z.enum(["planned", "open", "closed"]),
  restMinutes: z.int(),
  /** The calendar day on which people really stand in the hall: ages are judged by it. */
  heldOn: z.string(),
  /** The calendar day on which it was closed last; null while it is not, and for days from before this was kept. */
  closedOn: z.string().nullable(),
});

const newDay = z.object({
  ...planShape,
  sure: sureSchema,
  restMinutes: restSchema.default(5),
  /** Parameters that differ from the handbook's, by test. */
  parameters: z.partialRecord(z.enum(testCodes), z.unknown()).default({}),
});

function protocolsOf(parameters: z.infer<typeof newDay>["parameters"]): DayProtocol[] {
  return testCodes.map((test) => ({
    test,
    parameters: readParameters(test, parameters[test] ?? protocolOf(test).defaults),
  }));
}

function dayView(db: ReadableDb, day: Day, today: string): z.infer<typeof daySchema> {
  const last = dayEvents(db, day.id).at(-1);
  return { ...day, heldOn: heldOn(day, today), closedOn: last?.kind === "closed" ? last.on : null };
}

/** Making, opening and closing a day, and seeing where it stands. */
export const day = router({
  overview,
  forecast,
  floor,
  protocols,
  setProtocol,
  setRest,
  changePlan,
  discard,
  listAgain,
  beforeClosing,
  reopen,
  history,
  openDemo,
  leaveDemo,

  /** Returns the current day, the store in use, and earlier days. */
  current: allow("organiser", "check-in", "station", "second-judge", "board")
    .output(
      z.object({
        kind: z.enum(["own", "demo"]),
        today: z.string(),
        day: daySchema.nullable(),
        earlier: z.array(daySchema),
      }),
    )
    .query(({ ctx: { desk } }) => {
      const { db } = desk.store;
      const today = isoDate(desk.now());
      const day = dayAtHand(db);
      const earlier = allDays(db).filter((each) => each.state === "closed");
      return {
        kind: desk.kind,
        today,
        day: day === undefined ? null : dayView(db, day, today),
        earlier: earlier.map((each) => dayView(db, each, today)),
      };
    }),

  /** Plans a day; its protocols can change until it opens. Not in the demo, which is thrown away. */
  create: allow("organiser")
    .input(newDay)
    .mutation(({ ctx: { desk }, input }) =>
      desk.store.write(["day"], (db) => {
        if (desk.kind === "demo") throw new Refusal("conflict", sentence("day.inDemo"));
        if (dayAtHand(db) !== undefined) throw new Refusal("conflict", sentence("day.already"));
        const { date, title, restMinutes } = input;
        requireNearOrSure(desk, date, input.sure);
        return { dayId: addDay(db, { date, title, restMinutes }, protocolsOf(input.parameters)) };
      }),
    ),

  /** Opens the planned day and freezes its protocols; opening an open day changes nothing. */
  open: allow("organiser")
    .input(z.object({ sure: sureSchema }).prefault({}))
    .mutation(({ ctx: { desk }, input }) =>
      desk.store.write(["day"], (db) => {
        const { id, state, date } = requireDay(db);
        if (state !== "planned") return { dayId: id };
        requireNearOrSure(desk, date, input.sure);
        setDayState(db, id, "open");
        addDayEvent(db, id, lineOf(desk, "opened"));
        return { dayId: id };
      }),
    ),

  /** Closes a day: no more entries; existing ones stay. Closing it twice changes nothing. */
  close: allow("organiser")
    .input(z.object({ dayId: z.int() }))
    .mutation(({ ctx: { desk }, input }) =>
      desk.store.write(["day"], (db) => {
        if (dayById(db, input.dayId) === undefined) throw new Refusal("not-found", sentence("day.none"));
        requireNobodyGoing(db, input.dayId);
        if (dayById(db, input.dayId)?.state === "closed") return;
        setDayState(db, input.dayId, "closed");
        addDayEvent(db, input.dayId, lineOf(desk, "closed"));
      }),
    ),
});
