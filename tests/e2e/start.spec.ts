import { execFile } from "node:child_process";
import { once } from "node:events";
import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { test } from "./fixture.ts";
import { statusOf } from "./page.ts";

test("a second start brings the first window back and ends", async ({ tapeline, stage }) => {
  await tapeline.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.hide());
  const { executablePath, args } = stage.runtime;
  const second = execFile(executablePath, args, { env: tapeline.environment() });
  expect(await once(second, "exit")).toEqual([0, null]);
  const windows = await tapeline.app.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows().map((window) => window.isVisible()),
  );
  expect(windows).toEqual([true]);
});

test("what was entered is there after a restart", async ({ tapeline }) => {
  const body = JSON.stringify({ date: "2031-05-04", title: "Kept over a restart", sure: true });
  const headers = { "content-type": "application/json" };
  expect(await statusOf(tapeline.desk, "/trpc/day.create", { method: "POST", body, headers })).toBe(200);
  await tapeline.restart();
  const answer = await tapeline.desk.evaluate(() =>
    fetch("/trpc/day.current").then((response) => response.json()),
  );
  expect(answer.result.data.day).toMatchObject({ date: "2031-05-04", title: "Kept over a restart" });
});

test("a store that can't be opened is explained and left alone", async ({ tapeline }) => {
  const file = join(tapeline.folder, "tapeline.sqlite");
  const other = "This was never a store. ".repeat(400);
  await tapeline.restart(() => writeFile(file, other));
  const heading = tapeline.desk.getByRole("heading", { level: 1 });
  await expect(heading).toHaveText("Tapeline can't open its data");
  await expect(tapeline.desk.getByRole("main")).toContainText(
    "belongs to another program. Nothing was changed.",
  );
  await expect(tapeline.desk.getByRole("main")).toContainText(file);
  // There is no backup yet; what can be done moves nothing before it is pressed.
  const offered = ["Look for backups elsewhere", "Start with no data"];
  await expect(tapeline.desk.getByRole("button")).toHaveText(offered);
  // This page's own policy lets nothing of it ask for anything.
  expect(await statusOf(tapeline.desk, "/trpc/day.current")).toBe("TypeError");
  expect(await readFile(file, "utf8")).toBe(other);
});

test("a store that the system keeps from us is explained too", async ({ tapeline }) => {
  const file = join(tapeline.folder, "tapeline.sqlite");
  await tapeline.restart(async () => {
    await rm(file);
    await mkdir(file);
  });
  await expect(tapeline.desk.getByRole("main")).toContainText("Check that the disk is there");
  await expect(tapeline.desk.getByRole("main")).toContainText(/The system says: \S/);
});

test("a start page that is left open over midnight offers the new day, and begins one of that date", async ({
  tapeline: { desk, clock },
}) => {
  const date = desk.getByLabel("Date", { exact: true });
  const today = () => desk.evaluate(() => new Intl.DateTimeFormat("sv").format(new Date()));
  await expect(date).toHaveValue(await today());
  await desk.getByRole("textbox", { name: "Name" }).fill("The morning after");
  await clock.hold();
  const before = await today();
  await clock.pass(24 * 3_600_000);
  const after = await today();
  expect(after).not.toBe(before);
  await expect(date).toHaveValue(after, { timeout: 20_000 });
  await desk.getByRole("button", { name: "Create the day" }).click();
  await expect(desk.getByRole("heading", { name: "Overview of the day" })).toBeVisible();
  const answer = await desk.evaluate(() => fetch("/trpc/day.current").then((response) => response.json()));
  expect(answer.result.data.day).toMatchObject({ date: after, title: "The morning after" });
});
