import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { callDoor } from "../e2e/page.ts";
import type { Studio } from "./app.ts";
import { go, take } from "./take.ts";

const roster = `league,name,number,birth_year,board,share
Gravel Moon,Anvil Sparrow,7,1994,name,yes
Gravel Moon,Brine Kestrel,8,19x4,bib,yes
Gravel Moon,Cinder Plover,9,2012,name,no
`;

/** Sheets that are wrong in several ways, and questions before what can't be taken back. */
export async function takeFaults({ desk, offer }: Studio): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Spring testing day" });
  await desk.reload();
  const bring = async (name: string, content: string, picture: string) => {
    await go(desk, "/day");
    await go(desk, "/sheets");
    await offer(name, content);
    await desk.getByRole("button", { name: "Choose a file" }).click();
    await desk.getByRole("heading", { name }).waitFor();
    await take(desk, picture);
  };
  await bring("empty.csv", "", "fault-sheet-empty");
  await bring("club.csv", "Crew,Name\nGravel Moon,Anvil Sparrow\n", "fault-sheet-without-headers");
  await bring("roster.csv", roster, "fault-sheet-kept-back");
  await desk.getByRole("button", { name: /^Import \d/ }).click();
  await desk.getByRole("heading", { name: "2 rows imported" }).waitFor();
  await take(desk, "fault-sheet-taken-in");
  await go(desk, "/day");
  await take(desk, "planned-day");
  await go(desk, "/rehearsal");
  await offer("club.csv", "Crew,Name\nGravel Moon,Anvil Sparrow\n");
  await desk.getByRole("button", { name: "Choose the file: Roster" }).click();
  await desk.getByRole("button", { name: "Rehearse the day" }).click();
  await desk.getByRole("alert").waitFor();
  await take(desk, "fault-rehearsal");
  await callDoor(desk, "day.open", { sure: true });
  await go(desk, "/day");
  await desk.getByRole("button", { name: "Close the day" }).click();
  await desk.getByRole("alertdialog").waitFor();
  await take(desk, "question-close-the-day");
  await desk.getByRole("alertdialog").getByRole("button", { name: "Close the day" }).click();
  await desk.getByText(/^The day is closed/).waitFor();
  await go(desk, "/");
  await take(desk, "closed-home");
}

/** A file that is no store stands where the store should be. */
export function spoilFolder(folder: string): Promise<void> {
  return writeFile(join(folder, "tapeline.sqlite"), "This was never a store. ".repeat(400));
}

export async function takeRefusedStore({ desk }: Studio): Promise<void> {
  await take(desk, "fault-store");
}
