import { copyFile, mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { joinAs, test } from "./devices.ts";
import { attemptsOf, diskOf, openDayOfTwo, save, typeCore } from "./devices-kept.ts";
import { turnOnHere } from "./joining.ts";
import { callDoor } from "./page.ts";

/** The table's laptop dies, and its store comes back from an earlier backup: what its devices hand in. */

test("a table that comes back from an earlier backup gets from the device what it lacks, once", async ({
  tapeline,
  chromium,
}) => {
  await openDayOfTwo(tapeline.desk, ["Petra Fied", "Max Impact"]);
  const url = await turnOnHere(tapeline.desk);
  const { page, context } = await openDevice(chromium, 1024, 768);
  await joinAs(tapeline.desk, { page }, url, "Blue tablet", "Core");
  await page.getByRole("heading", { level: 1 }).filter({ hasText: "Staged plank" }).waitFor();
  const backup = await mkdtemp(join(tmpdir(), "tapeline-backup-"));
  await tapeline.restart(() => copyStore(tapeline.folder, backup));
  await typeCore(page, 1, "1:07");
  await save(page);
  await expect.poll(() => attemptsOf(tapeline.desk, 1)).toBe(1);
  await expect(page.getByText(/sent entries saved/)).toBeVisible();
  await typeCore(page, 2, "1:08");
  await page.keyboard.press("Enter");
  await expect.poll(() => attemptsOf(tapeline.desk, 2)).toBe(1);

  await tapeline.restart(() => copyStore(backup, tapeline.folder));
  await expect.poll(() => attemptsOf(tapeline.desk, 2), { timeout: 90_000 }).toBe(1);
  expect(await attemptsOf(tapeline.desk, 1)).toBe(1);
  await expect(page.getByText(/The table is there · sent entries saved/)).toBeVisible();
  // Who is deleted at the table goes from the device too, at its next comparison.
  expect((await diskOf(page)).rows).toBe(2);
  await callDoor(tapeline.desk, "people.erase", {
    ...{ erasureId: crypto.randomUUID(), athleteId: 2, typed: "Max Impact", by: "QA" },
  });
  await expect.poll(async () => (await diskOf(page)).rows, { timeout: 90_000 }).toBe(1);
  await context.close();
  await rm(backup, { recursive: true });
});

/** Puts the store of one folder, with its log, in place of another's. */
async function copyStore(from: string, to: string): Promise<void> {
  const isStore = (name: string) => name.startsWith("tapeline.sqlite");
  for (const name of (await readdir(to)).filter(isStore)) await rm(join(to, name));
  for (const name of (await readdir(from)).filter(isStore)) await copyFile(join(from, name), join(to, name));
}
