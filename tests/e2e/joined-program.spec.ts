import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test as base } from "./fixture.ts";
import {
  askToJoin,
  athlete,
  joinTable,
  kill,
  type Laptop,
  letIn,
  openOwnTable,
  shownAt,
  withLaptop,
} from "./joined-program.ts";
import { callDoor, statusOf, withoutContentPolicy } from "./page.ts";
import { kiosk } from "./shut-desk.ts";
import { entryOf, fieldOf, keyFromPaper } from "./stations.ts";

/** Two laptops with the same program: one is the table, the other becomes a device of it. */

const test = base.extend<{ laptop: Laptop }>({ laptop: withLaptop });

test("a second laptop joins by address, code and key, and what is keyed there is at the table and on the big screen", async ({
  tapeline,
  laptop,
}) => {
  const { desk } = tapeline;
  await openOwnTable(tapeline);
  const board = await tapeline.openBoard();
  const first = await laptop.page("desk");
  await first.getByRole("link", { name: "Join a table" }).click();
  await expectForEverybody(first);
  await askToJoin(first, await shownAt(desk));
  await letIn(desk, first, "Core");

  const station = await laptop.page("device");
  await expect(station.getByRole("heading", { level: 1 })).toContainText("Staged plank");
  await expect(station.getByText("Core only")).toBeAttached();
  // Nothing of this laptop's own is offered: no lock, no bridge to its files and printers, one window.
  await expect(station.getByRole("button", { name: /unlock/i })).toHaveCount(0);
  expect(await station.evaluate(() => "bridge" in window)).toBe(false);
  expect(laptop.launched.app.windows()).toHaveLength(1);
  await expect(desk.getByRole("row", { name: /Second laptop/ })).toContainText("Connected");

  await keyFromPaper(station);
  await entryOf(station).getByRole("textbox", { name: "Bib", exact: true }).fill(String(athlete.bib));
  await station.keyboard.press("Enter");
  await fieldOf(station, "Time").fill("1:03");
  await station.keyboard.press("Enter");
  await station.getByRole("textbox", { name: "Your initials" }).fill("qa");
  await station.keyboard.press("Enter");
  await expect(entryOf(station).getByText("Saved").first()).toBeVisible();
  await expect(board.getByText(athlete.name).first()).toBeVisible();
  await desk.evaluate(() => {
    location.hash = "/station/core";
  });
  await expect(desk.getByText("1:03").first()).toBeVisible();

  // It leaves by itself: its own first screen is there again, and the table has one device less.
  await leave(station);
  const again = await laptop.page("desk");
  await expect(again.getByRole("heading", { name: "New testing day" })).toBeVisible();
  await desk.evaluate(() => {
    location.hash = "/devices";
  });
  await expect(desk.getByText("No device has joined yet.")).toBeVisible();
});

test("a table that was killed and started again has the laptop back, and a laptop started while it is away waits for it", async ({
  tapeline,
  laptop,
}) => {
  await openOwnTable(tapeline);
  const first = await laptop.page("desk");
  await first.getByRole("link", { name: "Join a table" }).click();
  // With a PIN of its own it is as shut as one that was handed over.
  await callDoor(first, "lock.setPin", { pin: "314159", current: null });
  await askToJoin(first, await shownAt(tapeline.desk));
  await letIn(tapeline.desk, first, "Agility");
  const station = await laptop.page("device");
  await expect(station.getByText("Agility only")).toBeAttached();
  expect(await kiosk(laptop.launched.app)).toEqual({ kiosk: true, full: true, menu: false });

  await kill({ process: tapeline.app.process() });
  await expect(station.getByText(/Table away since/)).toBeVisible();
  // Its pages are its own, so it starts and reloads without the table.
  await laptop.restart();
  const waiting = await laptop.page("device");
  await expect(
    waiting.getByRole("heading", { name: "The organiser's laptop does not answer" }),
  ).toBeVisible();
  await expect(waiting.getByText(/in use for: Agility/)).toBeVisible();
  await expectForEverybody(waiting);
  await waiting.reload();
  await expect(
    waiting.getByRole("heading", { name: "The organiser's laptop does not answer" }),
  ).toBeVisible();

  await tapeline.restart();
  await expect(waiting.getByText("Agility only")).toBeAttached();
  await callDoor(tapeline.desk, "board.hide", { hidden: true });
  await expect(waiting.getByRole("button", { name: /Show the big screen/i })).toBeVisible();
  expect(await kiosk(laptop.launched.app)).toEqual({ kiosk: true, full: true, menu: false });

  // Left, it is at its own first screen, which only the PIN opens.
  await leave(waiting);
  const own = await laptop.page("desk");
  await expect(own.getByRole("textbox", { name: "PIN" }).or(own.getByLabel("PIN"))).toBeVisible();
  await expect(own.getByRole("heading", { name: "New testing day" })).toHaveCount(0);
});

test("what is typed at a joined laptop while the table is away outlasts both, and is at the table once", async ({
  tapeline,
  laptop,
}) => {
  await openOwnTable(tapeline);
  const station = await joinTable(tapeline.desk, laptop, "Core");
  await keyFromPaper(station);
  await entryOf(station).getByRole("textbox", { name: "Bib", exact: true }).fill(String(athlete.bib));
  await station.keyboard.press("Enter");
  await fieldOf(station, "Time").fill("1:03");
  await kill({ process: tapeline.app.process() });
  await station.keyboard.press("Enter");
  await station.getByRole("textbox", { name: "Your initials" }).fill("qa");
  await station.keyboard.press("Enter");
  await expect(station.getByText(/1 waits for the table/)).toBeVisible();
  // Leaving now would lose it, and says so.
  await station.getByRole("button", { name: "Leave the table" }).click();
  await expect(station.getByRole("alertdialog")).toContainText("1 entry on it has not reached");
  await station.getByRole("button", { name: "Stay" }).click();

  await laptop.restart();
  await (await laptop.page("device")).getByRole("heading", { name: /does not answer/ }).waitFor();
  await tapeline.restart();
  const again = await laptop.page("device");
  await expect(again.getByText(/sent entries saved/)).toBeVisible();
  const { desk } = tapeline;
  await desk.evaluate(() => {
    location.hash = "/station/core";
  });
  await expect(desk.getByRole("button", { name: /^History of the result/ })).toHaveCount(1);
});

test("another key is refused in a sentence, and a laptop that was sent away says so and goes back", async ({
  tapeline,
  laptop,
}) => {
  const { desk } = tapeline;
  await openOwnTable(tapeline);
  const first = await laptop.page("desk");
  await first.getByRole("link", { name: "Join a table" }).click();
  const shown = await shownAt(desk);
  await askToJoin(first, { ...shown, key: "0000 1111 2222 3333 4444" });
  await expect(first.getByText(/has another key, so nothing was sent to it/)).toBeVisible();
  await expect(desk.getByText(/asks to join/)).toHaveCount(0);
  await expectForEverybody(first);

  // A whole line that somebody pastes fills the three fields.
  await first.getByRole("textbox", { name: "Address" }).fill(`${shown.address} ${shown.code} ${shown.key}`);
  await expect(first.getByRole("textbox", { name: "That laptop's key" })).toHaveValue(shown.key);
  await first.getByRole("button", { name: "Join", exact: true }).click();
  await letIn(desk, first, "Big screen");
  const screen = await laptop.page("device");
  await expect(screen.locator("html")).toHaveAttribute("data-theme", "hall");

  // The window still connects to nothing: only the shell does, to the table.
  await withoutContentPolicy(laptop.launched.app, screen);
  const table = await desk.evaluate(() => document.body.textContent?.match(/https:\/\/[\d.:]+\//)?.[0] ?? "");
  expect(await statusOf(screen, table)).toBe("TypeError");
  const blocked = await laptop.launched.app.evaluate(() => globalThis.tapelineForTests?.blockedRequests());
  expect(blocked).toMatchObject({ count: 1 });

  await desk.getByRole("button", { name: "Send away: Second laptop" }).click();
  await desk.getByRole("alertdialog").getByRole("button", { name: "Send away" }).click();
  await expect(screen.getByText("The organiser sent it away.")).toBeVisible();
  await expectForEverybody(screen);
  await screen.getByRole("button", { name: "Back to the first screen" }).click();
  const again = await laptop.page("desk");
  await expect(again.getByRole("heading", { name: "New testing day" })).toBeVisible();
});

/** Lets the table go, and says so again when asked. */
async function leave(page: Page): Promise<void> {
  const go = { name: "Leave the table" };
  await page.getByRole("button", go).click();
  await page.getByRole("alertdialog").getByRole("button", go).click();
}
