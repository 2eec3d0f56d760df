import { expect } from "@playwright/test";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";

test("the overview tells between which times the day ends, what holds it up and what was planned, and follows what happens", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await desk.getByRole("button", { name: "Open the demo" }).click();
  await desk.getByRole("heading", { name: "Overview of the day" }).waitFor();
  const ends = desk.getByText(/^\d\d:\d\d(?: [AP]M)? and \d\d:\d\d(?: [AP]M)?$/);
  await expect(ends).toBeVisible();
  await expect(desk.getByText(/^Holding you up: /)).toBeVisible();
  await expect(desk.getByText(/lanned: between \d\d:\d\d.* and \d\d:\d\d/)).toBeVisible();
  const before = await ends.textContent();
  // Half of the people go home: the day ends earlier.
  const floor = await desk.evaluate(() => fetch("/trpc/day.floor").then((answer) => answer.json()));
  const ids: number[] = floor.result.data.map((line: { who: { athleteId: number } }) => line.who.athleteId);
  for (const athleteId of ids.slice(0, 25)) await callDoor(desk, "checkIn.withdraw", { athleteId });
  await expect(ends).not.toHaveText(before ?? "", { timeout: 30_000 });
});
