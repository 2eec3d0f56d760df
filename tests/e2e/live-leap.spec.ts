import { expect, type Page } from "@playwright/test";
import type { Length } from "../../electron/domain/length.ts";
import { inches } from "../lengths.ts";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { killApp } from "./kills.ts";
import { countedKeys, goToLive, heatOf, laneOf, median, openLive, zeroWithin } from "./live.ts";
import { callIn, scan, typeKeys } from "./live-own.ts";
import { callDoor } from "./page.ts";

/** Standing reach and three touches, in centimetres as they are typed; a point is a half. One reading in eight has one. */
const jumpers = [
  ["219", "264", "266", "261"],
  ["205", "241.", "243", "240"],
  ["231", "270", "279.", "277"],
  ["198", "233", "236", "238"],
  ["226", "262", "258", "261"],
] as const;
/** The best of the three less the reach. */
const heights = ["47", "38", "48.5", "40", "36"];

const field = (desk: Page) =>
  desk.getByRole("status", { name: /^(Standing reach|Height touched, \d of \d):/ });
const best = (desk: Page) => desk.locator('[data-test="vertical"]');

/** Longer than a reading is held back before it goes in by itself, in ms. */
const longMs = 1_500;

async function typed(desk: Page, text: string): Promise<void> {
  await expect(field(desk)).toHaveAccessibleName(new RegExp(`: ${text.replaceAll(".", "\\.")}$`));
}

test("three trials are typed digit by digit: the reach once, the best so far, and one more", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "vertical", 6);
  await clock.hold();
  const perAthlete: number[] = [];
  for (const [index, [reach, ...touches]] of jumpers.entries()) {
    const keys = countedKeys(desk);
    if (index % 2 === 0) await callIn(desk, keys, "vertical", [index + 1, index + 2]);
    const called = keys.pressed();
    const lane = (index % 2) + 1;
    await expect(field(desk)).toHaveAccessibleName("Standing reach: ");
    await typeKeys(clock.pass, keys, ...reach);
    await clock.pass(longMs);
    for (const [trial, touch] of touches.entries()) {
      await expect(field(desk)).toHaveAccessibleName(`Height touched, ${trial + 1} of 3: `);
      await typeKeys(clock.pass, keys, ...touch);
      await clock.pass(longMs);
      await expect.poll(async () => trialsOf(desk, lane)).toBe(trial + 1);
    }
    await expect(laneOf(desk, lane)).toContainText(`${heights[index]}cm`);
    perAthlete.push(keys.pressed() - called);
  }
  console.log(
    `vertical: median ${median(perAthlete)} keys per athlete (${perAthlete.join(", ")}: every digit of reach and ` +
      `three touches, one key more for a half, no Enter), and 1 to call two athletes (target 12)`,
  );
  expect(median(perAthlete)).toBeLessThanOrEqual(12);
});

async function trialsOf(desk: Page, lane: number): Promise<number> {
  const { events } = await heatOf(desk, "vertical");
  return events.filter((event) => event.kind === "touch" && event.lane === lane).length;
}

test("what can't be is refused and what is odd is asked, and what was typed stays", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "vertical", 1);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "vertical", [1]);
  await expectForEverybody(desk);
  await typeKeys(clock.pass, keys, ..."219", "Enter");
  await expect(desk.getByText(/^Standing reach 219 cm/)).toBeVisible();
  const stage = best(desk).last();
  await typeKeys(clock.pass, keys, ..."21,8", "Enter");
  await expect(stage.getByRole("alert")).toContainText("half centimetres");
  await typed(desk, "21,8");
  for (let sign = 0; sign < 4; sign += 1) await keys.press("Backspace");
  await typeKeys(clock.pass, keys, ..."218");
  await expect(stage.getByRole("alert")).toContainText("below the standing reach");
  await keys.press("Enter");
  await typed(desk, "218");
  for (let sign = 0; sign < 3; sign += 1) await keys.press("Backspace");
  await typeKeys(clock.pass, keys, ..."300");
  await expect(stage.getByRole("alert")).toContainText("Is this right?");
  await expect(stage.getByRole("alert")).toContainText(/81 cm \(31\.\d+ in\)/);
  await expectForEverybody(desk);
  // Nothing goes in while it is asked.
  await clock.pass(longMs);
  await keys.press("Escape");
  await expect(stage.getByRole("alert")).toBeHidden();
  await typed(desk, "300");
  await clock.pass(longMs);
  expect(await trialsOf(desk, 1)).toBe(0);
  // No Enter says yes, however often.
  await keys.press("Enter");
  await keys.press("Enter");
  await expect(stage.getByRole("alert")).toContainText("Is this right?");
  expect(await trialsOf(desk, 1)).toBe(0);
  await keys.press("y");
  await expect.poll(() => trialsOf(desk, 1)).toBe(1);
  await expect(stage).toContainText("Best so far81 cm");
  // The tap is taken back, and the trial is void.
  await keys.press("Backspace");
  await expect(field(desk)).toHaveAccessibleName("Height touched, 1 of 3: ");
  await expect(stage).toContainText("No jump yet");
});

test("inches are typed as people say them, the pad takes fingers, and enough is enough", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "vertical", 1);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "vertical", [1]);
  await keys.press("Alt+i");
  for (const name of ["7", "ft", "2", "half"]) {
    await desk.getByRole("button", { name, exact: true }).click();
  }
  await typed(desk, "7' 2 1/2");
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: /^Save the reach/ }).click();
  // 7 ft 2 1/2 in is 86.5 in.
  await expect(desk.getByText(/^Standing reach 86.5 in/)).toBeVisible();
  await typeKeys(clock.pass, keys, ..."104.25", "Enter");
  await expect(best(desk).last()).toContainText("Best so far17.75 in");
  await typeKeys(clock.pass, keys, "1", "0", "5", "Space", "1", "/", "2", "Enter");
  await expect(best(desk).last()).toContainText("Best so far19 in");
  await keys.press("e");
  await expect(laneOf(desk, 1)).toContainText("19in");
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "done");
  const { events } = await heatOf(desk, "vertical");
  const lengths = events.map(({ detail }) => (detail as { length?: Length }).length);
  expect(lengths).toEqual([inches(86.5), inches(104.25), inches(105.5), undefined]);
});

test("a half is one key more, the reach is measured again, and without the tick nothing goes in by itself", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "vertical", 1);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "vertical", [1]);
  await typeKeys(clock.pass, keys, ..."219", ".");
  await clock.pass(longMs);
  await expect(desk.getByText(/^Standing reach 219.5 cm/)).toBeVisible();
  await keys.press("m");
  await typeKeys(clock.pass, keys, ..."218.5");
  await clock.pass(longMs);
  await expect(desk.getByText(/^Standing reach 218.5 cm/)).toBeVisible();
  await desk.getByText("Save automatically after three digits").click();
  await typeKeys(clock.pass, keys, ..."264");
  await clock.pass(longMs);
  await typed(desk, "264");
  expect(await trialsOf(desk, 1)).toBe(0);
});

test("a scan is a bib whatever is asked, and a reach as fast as a scan is not lost", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "vertical", 3);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "vertical", [1, 2]);
  await scan(desk, "219");
  await expect(desk.getByText("Nobody has bib 219 today.")).toBeVisible();
  await typed(desk, "219");
  await clock.pass(longMs);
  expect((await heatOf(desk, "vertical")).events).toEqual([]);
  await keys.press("Enter");
  await expect(desk.getByText(/^Standing reach 219 cm/)).toBeVisible();
});

test("a scan of somebody who still rests leaves nothing in the reading of the one before them", async ({
  tapeline: { desk },
}) => {
  await openLive(desk, "vertical", 1);
  await callIn(desk, countedKeys(desk), "vertical", [1]);
  const athleteId = await comesFromPushUps(desk, 2);
  await scan(desk, "2");
  const start = desk.getByRole("button", { name: "Let them start now" });
  await expect(start).toBeVisible();
  await expect(field(desk)).toHaveAccessibleName("Standing reach: ");
  await start.click();
  await expect(laneOf(desk, 2)).toContainText("Skater 2");
  expect((await heatOf(desk, "vertical")).lane.map(({ who }) => who.athleteId)).toContain(athleteId);
  await expect(field(desk)).toHaveAccessibleName("Standing reach: ");
});

/** Somebody who has done push-ups just now. */
async function comesFromPushUps(desk: Page, bib: number): Promise<number> {
  const said = { board: "bib", share: false, guardianConsent: false, by: "QA" };
  const who = { league: "North Quay", name: `Skater ${bib}`, number: "", birthYear: 1990 };
  const leaveOut = ["agility", "core", "endurance"];
  const { athleteId } = (await callDoor(desk, "checkIn.walkUp", { ...who, ...said, bib, leaveOut })) as {
    readonly athleteId: number;
  };
  const attempts = [{ id: crypto.randomUUID(), seen: { how: "tally", reps: 20, offAtEnd: 0 } }];
  const entry = { athleteId, test: "push-up", variant: "full", attempts, by: "QA", sure: true };
  await callDoor(desk, "station.enter", entry);
  return athleteId;
}

test("reach and trials are there again after the program was killed", async ({ tapeline }) => {
  await openLive(tapeline.desk, "vertical", 1);
  // The clocks run: it is the machine's own that goes on through the kill.
  const keys = countedKeys(tapeline.desk);
  await callIn(tapeline.desk, keys, "vertical", [1]);
  await typeKeys((ms) => tapeline.desk.waitForTimeout(ms), keys, ..."219", "Enter", ..."264", "Enter");
  await expect.poll(() => trialsOf(tapeline.desk, 1)).toBe(1);
  const before = await zeroWithin(tapeline.desk, "vertical");
  await killApp(tapeline);
  const { desk } = tapeline;
  await goToLive(desk, "vertical");
  const after = await zeroWithin(desk, "vertical");
  expect(Math.max(before.from, after.from)).toBeLessThanOrEqual(Math.min(before.until, after.until));
  await expect(field(desk)).toHaveAccessibleName("Height touched, 2 of 3:");
  await expect(best(desk).last()).toContainText("Best so far45 cm");
  const again = countedKeys(desk);
  await typeKeys((ms) => desk.waitForTimeout(ms), again, ..."266", "Enter", ..."261", "Enter");
  await expect(laneOf(desk, 1)).toContainText("47cm");
  const { recent } = (await callDoorQuery(desk)) as { recent: unknown[] };
  expect(recent).toHaveLength(3);
});

/** What the station tells of its newest attempts. */
async function callDoorQuery(desk: Page): Promise<unknown> {
  const input = encodeURIComponent(JSON.stringify({ test: "vertical", lengths: "cm" }));
  const answer = await desk.evaluate(
    (sent) => fetch(`/trpc/station.view?input=${sent}`).then((response) => response.json()),
    input,
  );
  return answer.result.data;
}
