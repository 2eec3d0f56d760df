import type { Page } from "@playwright/test";
import { callDoor } from "../e2e/page.ts";
import type { Studio } from "./app.ts";
import { takeBoardAt } from "./board.ts";
import { takePlaces } from "./places.ts";
import { go, take, takeOnScreens } from "./take.ts";

/** The first minutes: nothing yet, then a day with nobody on its list. */
export async function takeEmpty({ desk, board }: Studio): Promise<void> {
  await takeOnScreens(desk, "empty-home");
  await desk.getByRole("button", { name: "Create the day" }).click();
  await take(desk, "fault-home-without-a-name");
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Nobody yet" });
  await desk.reload();
  await takePlaces(desk, "empty");
  await go(desk, "/rehearsal");
  await take(desk, "empty-rehearsal");
  await desk.goto("app://desk/#/");
  await take(desk, "at-hand-home");
  await takeBoardAt(await board(), "empty-board", [1920, 1080]);
}

/** Three people, no mark yet. */
export async function takeThree({ desk, board }: Studio): Promise<void> {
  await threeAthletes(desk);
  await desk.reload();
  await takePlaces(desk, "three");
  await callDoor(desk, "station.callAthlete", { athleteId: 1, test: "push-up" });
  await takeBoardAt(await board(), "three-board", [1920, 1080]);
}

async function threeAthletes(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Three of us" });
  await callDoor(desk, "day.open", { sure: true });
  for (const [index, name] of ["Anvil Sparrow", "Brine Kestrel", "Cinder Plover"].entries()) {
    const who = { league: "Gravel Moon", name, number: `${index + 7}`, birthYear: 1995, bib: index + 1 };
    const agreed = { leaveOut: [], board: "name", share: true, guardianConsent: false, by: "QA" };
    await callDoor(desk, "checkIn.walkUp", { ...who, ...agreed });
  }
}
