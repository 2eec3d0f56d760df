import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { callDoor, goTo } from "./page.ts";
import type { Tapeline } from "./session.ts";
import { answerOpenDialog } from "./sheets.ts";

const outcome = { bib: null, leaveOut: [], board: "name", share: true, guardianConsent: false, by: "QA" };

/** One athlete, a woman, who does 22 push-ups: nobody here to compare with. */
export async function oneAthlete(desk: Page): Promise<void> {
  // The window is there before its store is open.
  await expect(desk.getByRole("button", { name: "Open the demo" })).toBeVisible();
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
  const who = {
    league: "North Quay",
    name: "Anvil Sparrow",
    number: "7",
    birthYear: 1990,
    category: "women",
  };
  await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome });
  const seen = { how: "tally", reps: 22, offAtEnd: 0 };
  const attempts = [{ id: crypto.randomUUID(), seen }];
  const entry = { athleteId: 1, test: "push-up", variant: "full", by: "QA", sure: true, attempts };
  await callDoor(desk, "station.enter", entry);
}

/** Chooses a file as a person does, the system's own dialog answered. */
export async function choose(tapeline: Tapeline, name: string, bytes: Uint8Array): Promise<void> {
  const file = join(tapeline.folder, name);
  await writeFile(file, bytes);
  await answerOpenDialog(tapeline, file);
  await tapeline.desk.getByRole("button", { name: "Choose a file" }).click();
  await expect(tapeline.desk.getByRole("heading", { name })).toBeVisible();
}

export async function openAthlete(desk: Page): Promise<void> {
  await goTo(desk, "Athletes");
  await desk.getByRole("link", { name: "Anvil Sparrow" }).click();
  await expect(desk.getByRole("heading", { name: "Anvil Sparrow", level: 1 })).toBeVisible();
}
