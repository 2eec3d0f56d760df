import { router } from "../door/trpc.ts";
import { save, settings } from "./settings.ts";
import { sheet, timetable } from "./timetable.ts";
import { progress, result, stop, whatIfs, work } from "./work.ts";

/** Planning a day before it begins: what is planned, what comes of it, and the timetable. */
export const plan = router({ settings, save, work, progress, stop, result, whatIfs, timetable, sheet });
