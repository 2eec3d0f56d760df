import { expect } from "@playwright/test";
import { readDoor } from "./devices-kept.ts";
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
  // All but three go home, and nobody else comes: what is told of the end is told anew. If half of the people left, who may
  // be done, its rounded times could stay as they were.
  const floor = (await readDoor(desk, "day.floor")) as readonly {
    readonly who: { readonly athleteId: number };
  }[];
  const here = floor.map(({ who }) => who.athleteId);
  const { people } = (await readDoor(desk, "checkIn.search", { query: "", limit: 100 })) as {
    readonly people: readonly { readonly athleteId: number }[];
  };
  const coming = people.map(({ athleteId }) => athleteId);
  expect(coming.length).toBeGreaterThan(0);
  for (const athleteId of coming) await callDoor(desk, "checkIn.noShow", { athleteId });
  for (const athleteId of here.slice(0, -3)) await callDoor(desk, "checkIn.withdraw", { athleteId });
  await expect(ends).not.toHaveText(before ?? "", { timeout: 30_000 });
});
