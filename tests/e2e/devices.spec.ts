import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { listeningOf } from "../network/sockets.ts";
import { expectForEverybody } from "./axe.ts";
import { openDevice } from "./browsers.ts";
import { joinAs, test } from "./devices.ts";
import { attemptsOf, bibWithoutPast, sayInitials, typeCore } from "./devices-kept.ts";
import { closeDay } from "./hall-screens.ts";
import { openDemoTable } from "./joining.ts";
import { environment } from "./launch.ts";
import { callDoor, statusOf } from "./page.ts";
import { entryOf } from "./stations.ts";

/** Devices in the system's own browser, joined to the running program over the network. */

test("a phone joins by code, holds a station, and what it does there is on the table at once", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const phone = await openDevice(chromium, 360, 640);
  await phone.page.goto(url);
  await expectForEverybody(phone.page, 5);
  await joinAs(desk, phone, url, "Red phone", "Core");
  await expect(phone.page.getByRole("heading", { level: 1 })).toContainText("Staged plank");
  // On a screen this small the head gives way to the tool.
  await phone.page.setViewportSize({ width: 1024, height: 768 });
  await expect(phone.page.getByText("Core only")).toBeAttached();
  await expect(phone.page.getByRole("button", { name: /unlock/ })).toHaveCount(0);
  const row = desk.getByRole("row", { name: /Red phone/ });
  await expect(row).toContainText("Connected");
  await expectForEverybody(desk);

  // What another station may, this device may not, whatever its page asks.
  const refused = await phone.page.evaluate(async () => {
    const ask = (path: string, body: object) =>
      fetch(`/trpc/${path}`, {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify(body),
      }).then(({ status }) => status);
    return [await ask("station.callNext", { test: "agility" }), await ask("lock.unlock", { pin: "1" })];
  });
  expect(refused).toEqual([403, 403]);

  // The change feed carries over: the table hides the big screen, and the phone's own key says so.
  await callDoor(desk, "board.hide", { hidden: true });
  await expect(phone.page.getByRole("button", { name: /Show the big screen/i })).toBeVisible();
  expect(phone.complaints).toEqual([]);

  // Reloaded, it is still who it was.
  await phone.page.reload();
  await expect(phone.page.getByText("Core only")).toBeAttached();
  await phone.context.close();
});

test("a question about a time from paper is answered at a tablet, and the next one can be typed", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { page, context } = await openDevice(chromium, 768, 1024);
  await joinAs(desk, { page }, url, "Blue tablet", "Core");
  const bib = await bibWithoutPast(desk);
  await typeCore(page, bib, "235");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "2:35, minutes and seconds" }).tap();
  await sayInitials(page);
  await expect(entryOf(page).getByText("2:35")).toBeVisible();
  await expect(entryOf(page).getByRole("textbox", { name: "Bib", exact: true })).toBeFocused();
  expect(await attemptsOf(desk, bib)).toBe(1);
  await context.close();
});

test("a television is a big screen, gets another place from the table, and is sent away", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const screen = await openDevice(chromium, 1920, 1080);
  await joinAs(desk, screen, url, "Hall television", "Big screen");
  await expect(screen.page.locator("html")).toHaveAttribute("data-theme", "hall");
  await expect(screen.page.locator("html")).toHaveAttribute("data-ready", "true");
  await desk
    .getByRole("row", { name: /Hall television/ })
    .getByRole("combobox")
    .selectOption("Check-in");
  await expect(screen.page.getByText("Check-in only")).toBeAttached();
  await desk.getByRole("button", { name: "Send away: Hall television" }).click();
  await desk.getByRole("alertdialog").getByRole("button", { name: "Send away" }).click();
  await expect(screen.page.getByRole("heading", { name: "Join the testing day" })).toBeVisible();
  await expect(desk.getByText("No device has joined yet.")).toBeVisible();
  expect(screen.complaints).toEqual([]);
  await screen.context.close();
});

test("a device says since when the table is out of reach, and goes on when it is back", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const tablet = await openDevice(chromium, 1024, 768);
  await joinAs(desk, tablet, url, "Blue tablet", "Agility");
  await expect(tablet.page.getByText(/only$/)).toBeAttached();
  await callDoor(desk, "network.turnOff", {});
  await expect(tablet.page.getByText(/Table away since/)).toBeVisible();
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port: Number(new URL(url).port) });
  await expect(tablet.page.getByText(/Table away since/)).toHaveCount(0);
  await tablet.context.close();
});

test("a television thanks everybody when the day is closed, and asks nobody to join", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { page, context, complaints } = await openDevice(chromium, 1920, 1080);
  await joinAs(desk, { page }, url, "Hall television", "Big screen");
  await expect(page.locator("html")).toHaveAttribute("data-theme", "hall");
  await expect(page.locator("html")).toHaveAttribute("data-ready", "true");
  // The table listens no longer than until it has said that it heard.
  const heard = page.waitForResponse(/\/device\/heard$/);
  await closeDay(desk);
  expect((await heard).status()).toBe(200);
  const end = page.getByRole("region", { name: "The end of the day" });
  await expect(end).toContainText("That was the day. Thank you, everybody!");
  await expect(end).toContainText(/[1-9]\d* tests done/);
  // The table's server is gone a little later, and the screen stays as it is.
  await expect.poll(() => statusOf(page, "/join.html")).toBe("TypeError");
  await expect(page.getByRole("region")).toHaveCount(1);
  await expect(page.getByText(/has not answered since/)).toHaveCount(0);
  await expectForEverybody(page);
  expect(complaints).toEqual([]);
  await context.close();
});

test("a wrong code and a no are said in words, and the code of a QR code is filled in", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const phone = await openDevice(chromium, 360, 640);
  await desk.getByRole("button", { name: "Show a code" }).click();
  await phone.page.goto(`${url}#AAAABBBB`);
  await expect(phone.page.getByLabel("Code")).toHaveValue("AAAA BBBB");
  expect(phone.page.url()).toBe(url);
  await phone.page.getByLabel("Name of this device").fill("Red phone");
  await phone.page.getByRole("button", { name: "Ask to join" }).click();
  await expect(phone.page.getByText("That is not the code.")).toBeVisible();
  const code = desk.locator("dd").filter({ hasText: /^[0-9A-Z]{4} [0-9A-Z]{4}(?! [0-9a-f]{4} )/ });
  await phone.page.getByLabel("Code").fill(((await code.textContent()) ?? "").slice(0, 9));
  await phone.page.getByRole("button", { name: "Ask to join" }).click();
  await desk.getByRole("button", { name: "Refuse" }).click();
  await expect(phone.page.getByText("The organiser did not let this device in.")).toBeVisible();
  await phone.context.close();
});

test("a program that nobody turned the switch on in listens on nothing", async ({ stage }) => {
  test.skip(process.platform !== "linux", "The system's list of sockets is Linux's.");
  const folder = await mkdtemp(join(tmpdir(), "tapeline-idle-"));
  // Not by the runner, which makes the program listen to it.
  const { executablePath, args } = stage.runtime;
  const child = spawn(executablePath, [...args], { env: environment(stage, folder), stdio: "ignore" });
  const log = join(folder, "logs", "tapeline.log");
  await expect
    .poll(() => readFile(log, "utf8").catch(() => ""), { message: "the program starts" })
    .toContain("store is=opened");
  const all = [child.pid ?? 0, ...(await descendantsOf(child.pid ?? 0))];
  expect(all.length).toBeGreaterThan(2);
  expect(all.flatMap((pid) => listeningOf(pid))).toEqual([]);
  child.kill();
  await once(child, "exit");
  await rm(folder, { recursive: true, force: true, maxRetries: 5 });
});

/** The processes that a process started, and those that they did (proc(5)). */
async function descendantsOf(id: number): Promise<number[]> {
  const threads = await readdir(`/proc/${id}/task`).catch(() => []);
  const lists = await Promise.all(
    threads.map((thread) => readFile(`/proc/${id}/task/${thread}/children`, "utf8").catch(() => "")),
  );
  const children = lists.join(" ").split(/\s+/).filter(Boolean).map(Number);
  const below = await Promise.all(children.map(descendantsOf));
  return [...children, ...below.flat()];
}
