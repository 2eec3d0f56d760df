import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { protocolOf, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import {
  addDay,
  allDays,
  type DayProtocol,
  dayAtHand,
  dayById,
  setDayState,
} from "../../store/tables/days.ts";
import { requireDay } from "../door/at-hand.ts";
import { isoDate } from "../door/calendar.ts";
import { allow, router } from "../door/trpc.ts";
import { requireNobodyGoing } from "../heat/over.ts";
import { leaveDemo, openDemo } from "./demo.ts";
import { floor } from "./floor.ts";
import { overview } from "./overview.ts";
import { protocols, readParameters, restSchema, setProtocol, setRest } from "./protocols.ts";

const daySchema = z.object({
  id: z.int(),
  date: z.string(),
  title: z.string(),
  state: z.enum(["planned", "open", "closed"]),
  restMinutes: z.int(),
});

const newDay = z.object({
  date: z.iso.date(),
  title: z.string().trim().min(1).max(80),
  restMinutes: restSchema.default(5),
  /** Parameters that differ from the standard rules, by test. */
  parameters: z.partialRecord(z.enum(testCodes), z.unknown()).default({}),
});

function protocolsOf(parameters: z.infer<typeof newDay>["parameters"]): DayProtocol[] {
  return testCodes.map((test) => ({
    test,
    parameters: readParameters(test, parameters[test] ?? protocolOf(test).defaults),
  }));
}

/** Makes, opens and closes a day, and shows its progress. */
export const day = router({
  overview,
  floor,
  protocols,
  setProtocol,
  setRest,
  openDemo,
  leaveDemo,

  /** Returns the current day, the store in use, and earlier days. */
  current: allow("organiser", "check-in", "station", "board")
    .output(
      z.object({
        kind: z.enum(["own", "demo"]),
        today: z.string(),
        day: daySchema.nullable(),
        earlier: z.array(daySchema),
      }),
    )
    .query(({ ctx: { desk } }) => ({
      kind: desk.kind,
      today: isoDate(desk.now()),
      day: dayAtHand(desk.store.db) ?? null,
      earlier: allDays(desk.store.db).filter((each) => each.state === "closed"),
    })),

  /** Plans a day; its protocols can change until it opens. Not in the demo, which is thrown away. */
  create: allow("organiser")
    .input(newDay)
    .output(z.object({ dayId: z.int() }))
    .mutation(({ ctx: { desk }, input }) =>
      desk.store.write(["day"], (db) => {
        if (desk.kind === "demo") throw new Refusal("conflict", sentence("day.inDemo"));
        if (dayAtHand(db) !== undefined) throw new Refusal("conflict", sentence("day.already"));
        const { date, title, restMinutes } = input;
        return { dayId: addDay(db, { date, title, restMinutes }, protocolsOf(input.parameters)) };
      }),
    ),

  /** Opens the planned day and freezes its protocols; opening an open day changes nothing. */
  open: allow("organiser")
    .output(z.object({ dayId: z.int() }))
    .mutation(({ ctx: { desk } }) =>
      desk.store.write(["day"], (db) => {
        const planned = requireDay(db);
        if (planned.state === "planned") setDayState(db, planned.id, "open");
        return { dayId: planned.id };
      }),
    ),

  /** Closes a day: no more entries; existing ones stay. Closing it twice changes nothing. */
  close: allow("organiser")
    .input(z.object({ dayId: z.int() }))
    .mutation(({ ctx: { desk }, input }) =>
      desk.store.write(["day"], (db) => {
        if (dayById(db, input.dayId) === undefined) throw new Refusal("not-found", sentence("day.none"));
        requireNobodyGoing(db, input.dayId);
        setDayState(db, input.dayId, "closed");
      }),
    ),
});
