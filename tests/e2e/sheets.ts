import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { callDoor, goTo } from "./page.ts";
import type { Tapeline } from "./session.ts";

/**
 * The three sheets of the main job. Leagues and people are invented. Number 12 is in both leagues, one name needs its
 * accent, one header is written as people write it, and the last row of the roster has a number of five digits.
 */
export const roster = `League,Name,Number,Birth Year,Category,Guardian-Consent,Board,Share
Gravel Moon,Anvil Sparrow,12,1998,women,,name,yes
Gravel Moon,Brine Kestrel,07,1999,women,,name,yes
Gravel Moon,Cinder Plover,331,2000,women,,bib,yes
Gravel Moon,Dusk Heron,45,1997,women,,name,yes
Gravel Moon,Hollow Bell,5,1994,open,,name,yes
Gravel Moon,Iron Thistle,600,1993,open,,bib,yes
Gravel Moon,Nettle Quay,1,1990,men,,name,no
Gravel Moon,Perla Vrána,66,1990,women,,name,no
Tin Harbour,Ember Dunlin,12,2001,women,,hidden,yes
Tin Harbour,Flint Curlew,90,1998,women,,name,yes
Tin Harbour,Gale Avocet,8,1999,women,,name,no
Tin Harbour,Juniper Wick,21,2009,open,no,bib,yes
Tin Harbour,Kite Marrow,77,1995,open,,name,yes
Tin Harbour,Lumen Ash,3,1992,open,,bib,yes
Tin Harbour,Moth Larder,44,1996,open,,bib,yes
Tin Harbour,Zoë Brack,2000,1985,men,,name,yes
Tin Harbour,Tall Order,12345,1991,men,,name,yes
`;

export const pastResults = `league,number,name,date,test,variant,mark,unit
Gravel Moon,12,Anvil Sparrow,2025-11-08,push-up,full,18,reps
Gravel Moon,12,Anvil Sparrow,2025-11-08,agility,,29,landings
Gravel Moon,12,Anvil Sparrow,2025-11-08,vertical,,40.5,cm
Gravel Moon,12,Anvil Sparrow,2025-11-08,core,,3:00,
Gravel Moon,12,Anvil Sparrow,2025-11-08,endurance,,6:20.0,
Gravel Moon,07,Brine Kestrel,2025-11-08,push-up,full,25,reps
Gravel Moon,331,Cinder Plover,2025-11-08,push-up,full,21,reps
Gravel Moon,45,Dusk Heron,2025-11-08,push-up,full,16,reps
Gravel Moon,5,Hollow Bell,2025-11-08,push-up,full,28,reps
Tin Harbour,12,Ember Dunlin,2025-11-08,push-up,full,20,reps
`;

const resultRows = [
  // Strength: reps done less those off at the end.
  "Gravel Moon,331,push-up,full,,17,0,,,,,,,,,",
  "Gravel Moon,45,push-up,full,,20,2,,,,,,,,,",
  "Gravel Moon,5,push-up,full,,30,0,,,,,,,,,",
  "Gravel Moon,600,push-up,full,,12,3,,,,,,,,,",
  "Gravel Moon,404,push-up,knee,,14,2,,,,,,,,,",
  "Tin Harbour,90,push-up,full,,26,3,,,,,,,,,",
  "Tin Harbour,8,push-up,full,,19,0,,,,,,,,,",
  "Tin Harbour,77,push-up,full,,15,1,,,,,,,,,",
  "Tin Harbour,3,push-up,full,,33,3,,,,,,,,,",
  "Tin Harbour,44,push-up,full,,21,0,,,,,,,,,",
  "Tin Harbour,2000,push-up,full,,40,0,,,,,,,,,",
  // Agility: 4 a lap, the quadrants over, half a landing less for a touch; both directions but one.
  "Gravel Moon,07,agility,,cw,,,7,0,1,,,,,,",
  "Gravel Moon,07,agility,,ccw,,,6,3,0,,,,,,",
  "Gravel Moon,331,agility,,cw,,,6,2,0,,,,,,",
  "Gravel Moon,331,agility,,ccw,,,6,2,2,,,,,,",
  "Gravel Moon,45,agility,,cw,,,8,0,3,,,,,,",
  "Gravel Moon,45,agility,,ccw,,,7,2,1,,,,,,",
  "Gravel Moon,5,agility,,cw,,,7,3,0,,,,,,",
  "Gravel Moon,5,agility,,ccw,,,7,3,0,,,,,,",
  "Tin Harbour,12,agility,,cw,,,7,1,0,,,,,,",
  "Tin Harbour,12,agility,,ccw,,,7,0,0,,,,,,",
  "Tin Harbour,90,agility,,cw,,,7,0,0,,,,,,",
  // Power: the touch less the reach; the first one in inches.
  "Gravel Moon,07,vertical,,,,,,,,85,100,in,,,",
  "Gravel Moon,331,vertical,,,,,,,,210,245,cm,,,",
  "Gravel Moon,45,vertical,,,,,,,,205.5,245.5,cm,,,",
  "Tin Harbour,12,vertical,,,,,,,,200,231.5,cm,,,",
  // Core: whole seconds.
  "Gravel Moon,07,core,,,,,,,,,,,2:05,,",
  "Gravel Moon,45,core,,,,,,,,,,,1:30.9,,",
  "Tin Harbour,12,core,,,,,,,,,,,95,,",
  // Endurance: one did not finish.
  "Gravel Moon,07,endurance,,,,,,,,,,,6:45.0,yes,",
  "Tin Harbour,12,endurance,,,,,,,,,,,6:41.3,yes,",
  "Gravel Moon,45,endurance,,,,,,,,,,,,no,2",
];

const resultColumns =
  "league,number,test,variant,direction,reps,off_at_end,laps,extra,touches,standing_reach,touch_reach,unit,time,finished,rounds_done";

/** Every row says who keyed it, and the first has a note: neither may ever leave. */
export const results = `${resultColumns},entered_by,note
${resultRows.map((row, index) => `${row},Wendla,${index === 0 ? "borrowed shoes" : ""}`).join("\n")}
`;

/** What a preview counts. */
interface Counts {
  readonly isNew: number;
  readonly keptBack: number;
}

/** Answers the next question for a file to open with `file`, as the system's own dialog would. */
export function answerOpenDialog({ app }: Pick<Tapeline, "app">, file: string): Promise<void> {
  return app.evaluate(({ dialog }, path) => {
    Object.assign(dialog, { showOpenDialog: async () => ({ canceled: false, filePaths: [path] }) });
  }, file);
}

/** Answers the next question where to save with `file`. */
export function answerSaveDialog({ app }: Tapeline, file: string): Promise<void> {
  return app.evaluate(({ dialog }, path) => {
    Object.assign(dialog, { showSaveDialog: async () => ({ canceled: false, filePath: path }) });
  }, file);
}

/** Brings a file to the sheets' screen and waits until it has been read or refused. */
export async function bringSheet(tapeline: Tapeline, name: string, content: string | Uint8Array) {
  const { desk, folder } = tapeline;
  const file = join(folder, name);
  await writeFile(file, content);
  await answerOpenDialog(tapeline, file);
  await goTo(desk, "Import");
  await desk.getByRole("button", { name: "Choose a file" }).click();
  await expect(desk.getByRole("heading", { name })).toBeVisible();
}

/** Takes a sheet in as a person does: choose it, look at the counts, press the one button. */
export async function takeIn(tapeline: Tapeline, name: string, content: string, counts: Counts) {
  const { desk } = tapeline;
  await bringSheet(tapeline, name, content);
  await expectCount(desk, "New", counts.isNew);
  await expectCount(desk, "Not imported", counts.keptBack);
  await desk.getByRole("button", { name: `Import ${counts.isNew} rows` }).click();
  await expect(desk.getByRole("heading", { name: `${counts.isNew} rows imported` })).toBeVisible();
  await desk.getByRole("button", { name: "Import another file" }).click();
  await expect(desk.getByRole("button", { name: "Choose a file" })).toBeFocused();
}

/** Takes a sheet in by the desk's door, as the sheets' screen does, for what takes too long by hand. */
export async function takeSheet(desk: Page, kind: "roster" | "past", sheet: string): Promise<void> {
  const uploadId = await desk.evaluate(async (text) => {
    const headers = { "content-type": "application/octet-stream" };
    const answer = await fetch("/trpc/intake.upload", { method: "POST", headers, body: new Blob([text]) });
    return (await answer.json()).result.data.uploadId as string;
  }, sheet);
  await callDoor(desk, "intake.take", { uploadId, kind });
}

/** The numbers of a preview are read out together. */
async function expectCount(desk: Page, label: string, count: number): Promise<void> {
  await expect(desk.getByRole("main").getByRole("status")).toContainText(`${label}${count}`);
}
