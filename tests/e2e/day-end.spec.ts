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
  // All but three go home, and nobody else comes: what is told of the end is told anew. If half of the people left, who may
  // be done, its rounded times could stay as they were.
  const read = (path: string) => desk.evaluate((from) => fetch(from).then((answer) => answer.json()), path);
  const floor = await read("/trpc/day.floor");
  const here: number[] = floor.result.data.map((line: { who: { athleteId: number } }) => line.who.athleteId);
  const input = encodeURIComponent(JSON.stringify({ query: "", limit: 100 }));
  const expected = await read(`/trpc/checkIn.search?input=${input}`);
  const coming: number[] = expected.result.data.people.map(
    (person: { athleteId: number }) => person.athleteId,
  );
  expect(coming.length).toBeGreaterThan(0);
  for (const athleteId of coming) await callDoor(desk, "checkIn.noShow", { athleteId });
  for (const athleteId of here.slice(0, -3)) await callDoor(desk, "checkIn.withdraw", { athleteId });
  await expect(ends).not.toHaveText(before ?? "", { timeout: 30_000 });
});
