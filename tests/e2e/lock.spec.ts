import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { killApp } from "./kills.ts";
import { callDoor, statusOf } from "./page.ts";
import {
  addressesLeadNowhere,
  closingIsRefused,
  doorStaysShut,
  endedPageComesBack,
  go,
  keysDoNothing,
  kiosk,
  placesLeadBack,
  plank,
  shellStaysShut,
} from "./shut-desk.ts";

const pin = "271828";
const wrong = "314159";

test("a desk that is handed over to a station has no way out but the PIN, through a crash too", async ({
  tapeline,
}) => {
  await openDayOfOne(tapeline.desk);
  await choosePin(tapeline.desk);
  await tapeline.desk.getByRole("button", { name: "Core" }).click();
  await expect(plank(tapeline.desk)).toBeVisible();
  expect(await kiosk(tapeline.app)).toEqual({ kiosk: true, full: true, menu: false });

  await placesLeadBack(tapeline.desk);
  await doorStaysShut(tapeline.desk);
  await shellStaysShut(tapeline.desk);
  await keysDoNothing(tapeline.app, tapeline.desk);
  await closingIsRefused(tapeline.app, tapeline.desk);
  await addressesLeadNowhere(tapeline.desk);
  const desk = await endedPageComesBack(tapeline.app, tapeline.desk);

  await tapeline.clock.hold();
  for (let tries = 0; tries < 3; tries += 1) await callDoor(desk, "lock.unlock", { pin: wrong });
  await tapeline.clock.pass(1_000);
  await killApp(tapeline);
  await expect(plank(tapeline.desk)).toBeVisible();
  await tapeline.desk.keyboard.press("Alt+u");
  const dialog = tapeline.desk.getByRole("alertdialog", { name: "Back to the organiser" });
  await expect(dialog).toContainText("4 seconds left");
  expect(await callDoor(tapeline.desk, "lock.unlock", { pin })).toMatchObject({ outcome: "wait" });
  await dialog.getByLabel("PIN").fill(pin);
  const open = dialog.getByRole("button", { name: "Unlock" });
  await tapeline.clock.pass(3_900);
  await expect(dialog).toContainText("1 second left");
  await expect(open).toBeDisabled();
  await tapeline.clock.pass(100);
  await open.click();
  await expect(tapeline.desk.getByRole("link", { name: "Overview" })).toBeVisible();
  expect(await kiosk(tapeline.app)).toMatchObject({ kiosk: false, full: false });
});

test("a locked desk shows nothing, keeps what was typed, and a forgotten PIN leaves a mark", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await choosePin(desk);
  await expectForEverybody(desk);
  await go(desk, "/");
  const name = desk.getByLabel("Name");
  await name.fill("Half typ");
  await tapeline.app.evaluate(({ powerMonitor }) => powerMonitor.emit("suspend"));
  const cover = desk.getByRole("dialog", { name: "This laptop is locked" });
  await expect(cover).toBeVisible();
  await expect(name).toBeHidden();
  await expectForEverybody(desk);
  await desk.keyboard.press("Escape");
  await desk.keyboard.press("Escape");
  await expect(cover).toBeVisible();
  expect(await statusOf(desk, "/trpc/day.current")).toBe(403);
  for (const digit of wrong) await cover.getByRole("button", { name: digit, exact: true }).click();
  await desk.keyboard.press("Enter");
  await expect(cover).toContainText("That is not the PIN.");
  await cover.getByLabel("PIN").fill(pin);
  await desk.keyboard.press("Enter");
  await expect(cover).toBeHidden();
  await expect(name).toHaveValue("Half typ");

  expect(await readFile(join(tapeline.folder, "lock.json"), "utf8")).not.toContain(pin);
  await go(tapeline.desk, "/lock");
  await expect(tapeline.desk.getByText("empty file named forget-pin")).toContainText(tapeline.folder);
  await tapeline.restart(() => writeFile(join(tapeline.folder, "forget-pin"), ""));
  await go(tapeline.desk, "/lock");
  await expect(tapeline.desk.getByRole("heading", { name: "Choose a PIN" })).toBeVisible();
  await expect(tapeline.desk.getByText("removed with the file forget-pin in the data folder")).toBeVisible();
});

async function openDayOfOne(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2031-05-04", title: "Locked day" });
  await callDoor(desk, "day.open", { sure: true });
  await callDoor(desk, "checkIn.walkUp", {
    ...{ league: "Gravel Moon", name: "Anvil Sparrow", number: "7", birthYear: 1995, bib: 1 },
    ...{ leaveOut: [], board: "name", share: true, guardianConsent: false, by: "QA" },
  });
}

async function choosePin(desk: Page): Promise<void> {
  await go(desk, "/lock");
  await desk.getByLabel("New PIN").fill(pin);
  await desk.getByLabel("The same again").fill(pin);
  await desk.getByRole("button", { name: "Set this PIN" }).click();
  await expect(desk.getByRole("heading", { name: "Hand this laptop over" })).toBeVisible();
}
