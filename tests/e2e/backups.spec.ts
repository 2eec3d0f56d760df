import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import { answerOpenDialog } from "./sheets.ts";

const backupsIn = (folder: string) => readdirSync(folder).filter((name) => name.endsWith(".backup"));

test("the first screen shows the last backup, makes one, and keeps a second on a stick", async ({
  tapeline,
}) => {
  const { desk, folder } = tapeline;
  const stick = join(folder, "stick");
  mkdirSync(stick);
  await callDoor(desk, "day.create", { sure: true, date: "2031-05-04", title: "Kept twice" });
  const own = desk.getByRole("region", { name: "On this laptop" });
  await own.getByRole("button", { name: "Back up now" }).click();
  await expect(own).toContainText("Last good backup: today at");
  await expect(desk.getByRole("status")).toContainText("Backed up, checked and safe.");
  expect(backupsIn(join(folder, "backups"))).toHaveLength(1);

  await answerOpenDialog(tapeline, stick);
  const second = desk.getByRole("region", { name: "On a USB stick or in a second folder" });
  await second.getByRole("button", { name: "Choose a second folder" }).click();
  await expect(second).toContainText("Last good backup: today at");
  await expect(second).toContainText(join(stick, "Tapeline backups"));
  expect(backupsIn(join(stick, "Tapeline backups"))).toHaveLength(1);

  renameSync(stick, `${stick} in a pocket`);
  await desk.reload();
  await expect(second).toContainText("Not plugged in.");
  await expectForEverybody(desk);
});

test("a damaged store is explained, set aside, and the newest backup put in its place", async ({
  tapeline,
}) => {
  const file = join(tapeline.folder, "tapeline.sqlite");
  await callDoor(tapeline.desk, "day.create", { sure: true, date: "2031-05-04", title: "Kept over damage" });
  let harmed = Buffer.alloc(0);
  await tapeline.restart(() => {
    harmed = readFileSync(file);
    // One bit, in the name of the day: nothing that SQLite's own checks would see.
    const bit = harmed.indexOf("Kept over damage");
    harmed.writeUInt8(harmed.readUInt8(bit) ^ 1, bit);
    writeFileSync(file, harmed);
    return Promise.resolve();
  });
  const { desk } = tapeline;
  await expect(desk.getByRole("heading", { level: 1 })).toHaveText("Tapeline can't open its data");
  await expect(desk.getByRole("main")).toContainText("Checked just now, and complete.");
  await expectForEverybody(desk);
  expect(readFileSync(file)).toEqual(harmed);

  await desk.getByRole("button", { name: "Go back to this one" }).click();
  await expect(desk.getByRole("heading", { name: "Kept over damage" })).toBeVisible();
  const aside = readdirSync(tapeline.folder).find((name) => /\.set-aside-.*\.sqlite$/.test(name)) ?? "";
  expect(readFileSync(join(tapeline.folder, aside))).toEqual(harmed);
});

test("where only backups are left, no new hall is begun until somebody wants one", async ({ tapeline }) => {
  await callDoor(tapeline.desk, "day.create", {
    sure: true,
    date: "2031-05-04",
    title: "Gone with its file",
  });
  await tapeline.restart(async () => {
    for (const name of readdirSync(tapeline.folder).filter((each) => each.startsWith("tapeline.sqlite"))) {
      rmSync(join(tapeline.folder, name));
    }
  });
  await expect(tapeline.desk.getByRole("main")).toContainText("its file is missing or empty");
  await tapeline.desk.getByRole("button", { name: "Start with no data" }).click();
  await expect(tapeline.desk.getByRole("button", { name: "Back up now" })).toBeVisible();
  await expect(tapeline.desk.getByRole("heading", { name: "Gone with its file" })).toHaveCount(0);
  await tapeline.restart(() => Promise.resolve());
  await expect(tapeline.desk.getByRole("button", { name: "Back up now" })).toBeVisible();
});
