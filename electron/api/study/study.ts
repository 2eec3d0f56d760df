import { z } from "zod";
import { lengthsSchema } from "../door/shapes.ts";
import { allow, router } from "../door/trpc.ts";
import { listStudies } from "./list.ts";
import { drop, plan } from "./plan.ts";
import { clear, correct, enter } from "./readings.ts";
import { requireStudy } from "./require.ts";
import { readStudy } from "./rows.ts";
import { find, read, toRead } from "./second-judge.ts";
import { lookAt, takeSheet } from "./sheet.ts";
import { sheetOfStudy, studySheets } from "./sheets-out.ts";
import { testsToRead } from "./to-read.ts";
import { viewStudy } from "./view.ts";

const organiser = allow("organiser");
const which = { studyId: z.uuid() };

/** Measuring studies: how well judges, or visits, agree. Their readings enter nobody's marks. */
export const study = router({
  list: organiser.query(({ ctx: { desk } }) => listStudies(desk.store.db)),

  /** The tests for which a device can have the place of the second judge now. */
  secondJudges: organiser.query(({ ctx: { desk } }) => testsToRead(desk.store.db)),

  /** One study with its rows, and what it shows once three athletes have a reading in every series. */
  get: organiser
    .input(z.object({ ...which, lengths: lengthsSchema }))
    .query(({ ctx: { desk }, input: { studyId, lengths } }) => {
      const { db } = desk.store;
      return viewStudy(db, readStudy(db, requireStudy(db, studyId)), lengths);
    }),

  /** One of a study's files; that of the readings holds names. */
  sheet: organiser
    .input(z.object({ ...which, which: z.enum(studySheets) }))
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      return sheetOfStudy(db, readStudy(db, requireStudy(db, input.studyId)), input.which);
    }),

  plan,
  drop,
  enter,
  correct,
  clear,
  lookAt,
  takeSheet,
  toRead,
  find,
  read,
});
