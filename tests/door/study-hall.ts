import { randomUUID } from "node:crypto";
import type { TestDesk } from "./desk.ts";
import { bring } from "./sheets.ts";
import { entry, reps, type StationDay, stationDay } from "./station-day.ts";

type Study = ReturnType<TestDesk["as"]>["study"];
type Plan = Parameters<Study["plan"]>[0];

/** A day on which six athletes have done push-ups, and the procedures of studies. */
export interface StudyHall extends StationDay {
  readonly study: Study;
}

/** What the station counted, by bib from 1. */
export const counted = [20, 25, 31, 18, 40, 27];

export async function studyHall(): Promise<StudyHall> {
  const day = await stationDay();
  for (const [index, done] of counted.entries()) {
    await day.station.enter(entry(day.idOf(index + 1), "push-up", reps(done), { sure: true }));
  }
  return { ...day, study: day.as("organiser").study };
}

/** A plan of two judges: what the station counted, and RS on the same attempts. */
export function planOf({ dayId }: StationDay, more: Partial<Plan> = {}): Plan {
  return {
    ...{ id: randomUUID(), test: "push-up", variant: "full", kind: "judges", dayId, aim: 20, by: "QA" },
    series: [
      { from: "marks", dayId, judge: "QA" },
      { from: "judge", judge: "RS" },
    ],
    ...more,
  };
}

/** Brings a sheet of RS's readings, and imports it. */
export async function takeReadings(hall: StudyHall, studyId: string, sheet: string, position = 2) {
  const uploadId = await bring(hall, sheet);
  const looked = await hall.study.lookAt({ uploadId, studyId, position });
  const taken = await hall.study.takeSheet({ uploadId, studyId, position, by: "QA" });
  return { uploadId, looked, taken };
}

/** A sheet of readings by bib from 1. */
export function sheetOf(readings: readonly (number | string)[]): string {
  return ["bib,mark", ...readings.map((reading, index) => `${index + 1},${reading}`)].join("\r\n");
}
