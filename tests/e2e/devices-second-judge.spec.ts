import { expect, type Page } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { joinAs, test } from "./devices.ts";
import { diskOf, openDayOfTwo, readDoor, sayInitials, turnOnAgain } from "./devices-kept.ts";
import { turnOnHere } from "./joining.ts";
import { callDoor } from "./page.ts";

/** A second judge's own device beside a station: what it shows, where its readings go, and what it keeps meanwhile. */

interface Row {
  readonly bib: number;
  readonly values: readonly ({ readonly number: string } | null)[];
}

/** What the station and the second judge have of each bib in the study. */
async function readingsOf(desk: Page, studyId: string) {
  const { rows } = (await readDoor(desk, "study.get", { studyId })) as { readonly rows: readonly Row[] };
  return rows.map(({ bib, values }) => [bib, ...values.map((value) => value?.number ?? null)]);
}

/** Plans a study of today's push-ups, of which two people are called to the station. */
async function planHere(desk: Page): Promise<string> {
  await openDayOfTwo(desk, ["Anvil Sparrow", "Brine Kestrel"]);
  const { day } = (await readDoor(desk, "day.current")) as { readonly day: { readonly id: number } };
  const series = [
    { from: "marks", dayId: day.id, judge: "QA" },
    { from: "judge", judge: "RS" },
  ];
  const id = crypto.randomUUID();
  const plan = { id, test: "push-up", variant: "full", kind: "judges", dayId: day.id, series, aim: 20 };
  await callDoor(desk, "study.plan", { ...plan, by: "QA" });
  await callDoor(desk, "station.callNext", { test: "push-up" });
  return id;
}

test("a second judge's phone shows who is at the station, and its readings come into the study once", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const studyId = await planHere(desk);
  await desk.reload();
  const url = await turnOnHere(desk);
  const { page, context, complaints } = await openDevice(chromium, 360, 640, { isMobile: true });
  await joinAs(desk, { page }, url, "Blue phone", "Second judge of Strength");
  await expect(page.getByRole("heading", { level: 1, name: /Second judge: Cadence push-up/ })).toBeVisible();
  const first = page.getByRole("button", { name: "Bib 1 Anvil Sparrow" });
  await expect(first).toBeVisible();

  // The station's own result, far from what the second judge sees: the phone never tells it, and never asks.
  const entry = { test: "push-up", variant: "full", by: "QA", sure: true };
  const seen = { how: "tally", reps: 47, offAtEnd: 0 };
  const { athleteId } = (await readDoor(desk, "station.find", { test: "push-up", bib: "1" }).then(
    (found) => (found as { readonly who: unknown }).who,
  )) as { readonly athleteId: number };
  await first.tap();
  await callDoor(desk, "station.enter", {
    ...{ ...entry, athleteId, attempts: [{ id: crypto.randomUUID(), seen }] },
  });
  await page.getByLabel("Top beats in total").fill("23");
  await page.keyboard.press("Enter");
  await page.getByLabel(/^Missed reps/).fill("0");
  await page.keyboard.press("Enter");
  await sayInitials(page);
  await expect(page.getByText(/^Bib 1, Anvil Sparrow: .*Saved for the study\.$/)).toBeVisible();
  await expect(page.getByText("RS: 1 athlete entered")).toBeVisible();
  expect(await readingsOf(desk, studyId)).toEqual([[1, "47", "23"]]);
  await expect(page.locator("body")).not.toContainText("47");

  // The table goes away: what is entered waits sealed on the phone, also if its page is closed, and comes once.
  await callDoor(desk, "station.callNext", { test: "push-up" });
  await page.getByRole("button", { name: "Bib 2 Brine Kestrel" }).tap();
  await callDoor(desk, "network.turnOff", {});
  await page.getByLabel("Top beats in total").fill("18");
  await page.getByLabel(/^Missed reps/).fill("0");
  await page.keyboard.press("Enter");
  await expect(page.getByText(/It waits on this device/)).toBeVisible();
  expect((await diskOf(page)).readable).toBe(false);
  await page.goto("about:blank");
  await turnOnAgain(desk, url);
  await page.goto(url);
  await expect(page.getByText("RS: 2 athletes entered")).toBeVisible();
  await expect(page.getByText(/sent entries saved/)).toBeVisible();
  expect(await readingsOf(desk, studyId)).toEqual([
    [1, "47", "23"],
    [2, null, "18"],
  ]);
  expect(complaints).toEqual([]);
  await context.close();
});

test("both directions of a quadrant jump make one reading, and the place is offered only with a study", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  await planHere(desk);
  await desk.reload();
  const url = await turnOnHere(desk);
  const { page, context } = await openDevice(chromium, 1024, 768);
  await joinAs(desk, { page }, url, "Blue tablet", "Check-in");
  const place = desk.getByRole("row", { name: /Blue tablet/ }).getByRole("combobox");
  const offered = async () =>
    (await place.locator("option").allTextContents()).filter((text) => text.startsWith("Second judge"));
  expect(await offered()).toEqual(["Second judge of Strength: cadence push-up"]);
  const { day } = (await readDoor(desk, "day.current")) as { readonly day: { readonly id: number } };
  const series = [
    { from: "marks", dayId: day.id, judge: "QA" },
    { from: "judge", judge: "RS" },
  ];
  const studyId = crypto.randomUUID();
  const plan = { id: studyId, test: "agility", variant: "", kind: "judges", dayId: day.id, series, aim: 20 };
  await callDoor(desk, "study.plan", { ...plan, by: "QA" });
  await expect.poll(offered).toContain("Second judge of Agility: quadrant jump");
  await place.selectOption({ label: "Second judge of Agility: quadrant jump" });
  await page.getByRole("button", { name: "Begin here" }).click();
  await page.getByRole("textbox", { name: "Bib", exact: true }).fill("2");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Bib 2 Brine Kestrel" })).toBeVisible();
  for (const laps of ["7", "6"]) {
    await page.getByLabel("Full laps").fill(laps);
    await page.getByLabel(/^Extra quadrants/).fill("0");
    await page.getByLabel("Line touches").fill("0");
    await page.keyboard.press("Enter");
    if (laps === "7") await expect(page.getByText(/Not saved yet\./)).toBeVisible();
  }
  await sayInitials(page);
  await expect(page.getByText(/Saved for the study\.$/)).toBeVisible();
  // Four landings a lap: 28 and 24, of which the result is the mean.
  expect(await readingsOf(desk, studyId)).toEqual([[2, null, "26"]]);
  await context.close();
});
