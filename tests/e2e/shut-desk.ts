import { type ElectronApplication, expect, type Page } from "@playwright/test";
import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";
import { pageOf } from "./launch.ts";
import { goToNothing, statusOf } from "./page.ts";

/** What is tried at a desk that is handed over to the station of the plank, to get out of it without the PIN. */

export const plank = (desk: Page) => desk.getByRole("heading", { name: "Core Staged plank" });

export async function go(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
}

export function kiosk(app: ElectronApplication) {
  return app.evaluate(({ BrowserWindow, Menu }) => {
    const [window] = BrowserWindow.getAllWindows();
    return {
      kiosk: window?.isKiosk(),
      full: window?.isFullScreen(),
      menu: Menu.getApplicationMenu() !== null,
    };
  });
}

/** The desk's own places, by their addresses. */
export async function placesLeadBack(desk: Page): Promise<void> {
  await desk.evaluate(() => Object.assign(window, { stillHere: true }));
  for (const path of ["/athletes/1", "/lock", "/sheets", "/bundle", "/station/agility"]) {
    await go(desk, path);
    await expect(desk).toHaveURL("app://desk/#/station/core");
  }
}

/** Another page, another program's page, another window, a file that is let go of over the page. */
export async function addressesLeadNowhere(desk: Page): Promise<void> {
  const away = ["app://desk/index.html", "app://board/", "https://example.org/", "file:///etc/hosts"];
  for (const address of away) await desk.evaluate((to) => location.assign(to), address);
  expect(await desk.evaluate(() => window.open("app://desk/") === null)).toBe(true);
  const refused = await desk.evaluate(() => {
    const drop = new DragEvent("drop", { bubbles: true, cancelable: true, dataTransfer: new DataTransfer() });
    return !document.body.dispatchEvent(drop);
  });
  expect(refused).toBe(true);
  // Asked of the page: the runner's own eyes wait for ever for a page that was refused.
  const here = await desk.evaluate(() => [location.href, Reflect.get(window, "stillHere")]);
  expect(here).toEqual(["app://desk/#/station/core", true]);
  await goToNothing(desk);
  await expect(plank(desk)).toBeVisible();
  expect(desk.url()).toBe("app://desk/#/station/core");
}

export async function doorStaysShut(desk: Page): Promise<void> {
  const input = (value: unknown) => `?input=${encodeURIComponent(JSON.stringify(value))}`;
  const asked = [
    `people.get${input({ athleteId: 1 })}`,
    `people.held${input({ athleteId: 1 })}`,
    `checkIn.search${input({ query: "a" })}`,
    `summary.zip${input({})}`,
    "bundle.preview",
    "lock.log",
    `station.view${input({ test: "agility", lengths: "cm" })}`,
  ];
  for (const path of asked) expect.soft([path, await statusOf(desk, `/trpc/${path}`)]).toEqual([path, 403]);
  const headers = { "content-type": "application/json" };
  const sent = [
    ["day.close", { dayId: 1 }],
    ["day.openDemo", {}],
    ["intake.upload", {}],
    ["people.erase", {}],
    ["lock.handOver", { to: { role: "check-in" } }],
    ["lock.setPin", { pin: "142857", current: null }],
    ["lock.removePin", { current: "314159" }],
  ] as const;
  for (const [path, body] of sent) {
    const init = { method: "POST", headers, body: JSON.stringify(body) };
    expect.soft([path, await statusOf(desk, `/trpc/${path}`, init)]).toEqual([path, 403]);
  }
}

export async function shellStaysShut(desk: Page): Promise<void> {
  const answers = await desk.evaluate(() => {
    const { bridge } = window as unknown as { bridge: Bridge };
    const page = { path: "/print/instructions/core", paper: "a4" } as const;
    const calls = [
      bridge.saveFile({ suggestedName: "x.zip", bytes: new Uint8Array(1) }),
      bridge.savePdf({ ...page, suggestedName: "x.pdf" }),
      bridge.print(page),
      bridge.openSheet(),
      bridge.openBoard(),
      bridge.report(),
      bridge.chooseBackupFolder(),
    ];
    return Promise.all(calls.map((call) => call.then(() => "done").catch((error: Error) => error.message)));
  });
  for (const answer of answers) expect(answer).toContain("Only the organiser may ask this.");
}

/** Real keys of the window: what would be reloaded, looked into, printed, made larger or left is still as it was. */
export async function keysDoNothing(app: ElectronApplication, desk: Page): Promise<void> {
  await app.evaluate(({ BrowserWindow }) => {
    const contents = BrowserWindow.getAllWindows()[0]?.webContents;
    const keys: [string, ("control" | "shift" | "alt" | "meta")[]][] = [
      ["F5", []],
      ["R", ["control"]],
      ["R", ["control", "shift"]],
      ["I", ["control", "shift"]],
      ["F12", []],
      ["P", ["control"]],
      ["F", ["control"]],
      ["N", ["control"]],
      ["W", ["control"]],
      ["=", ["control"]],
      ["F11", []],
      ["Left", ["alt"]],
    ];
    for (const [keyCode, modifiers] of keys) {
      contents?.sendInputEvent({ type: "keyDown", keyCode, modifiers });
      contents?.sendInputEvent({ type: "keyUp", keyCode, modifiers });
    }
    // A key that is let through comes after them all.
    contents?.sendInputEvent({ type: "keyDown", keyCode: "U", modifiers: ["alt"] });
  });
  const dialog = desk.getByRole("alertdialog", { name: "Back to the organiser" });
  await expect(dialog).toBeVisible();
  await dialog.getByRole("button", { name: "Stay here" }).click();
  expect(await desk.evaluate(() => Reflect.get(window, "stillHere"))).toBe(true);
  const after = await app.evaluate(({ BrowserWindow }) => {
    const windows = BrowserWindow.getAllWindows();
    const contents = windows[0]?.webContents;
    return [windows.length, contents?.isDevToolsOpened(), contents?.getZoomLevel()];
  });
  expect(after).toEqual([1, false, 0]);
  expect(await kiosk(app)).toMatchObject({ kiosk: true, full: true });
}

/** Alt+F4 arrives as `close`, Cmd+Q as `before-quit`. */
export async function closingIsRefused(app: ElectronApplication, desk: Page): Promise<void> {
  await app.evaluate(({ app: main, BrowserWindow }) => {
    BrowserWindow.getAllWindows()[0]?.close();
    main.quit();
  });
  await expect(plank(desk)).toBeVisible();
  expect(await kiosk(app)).toMatchObject({ kiosk: true });
}

/** A page may end its own window, and nothing is asked then: the desk opens it again, as shut as it was. */
export async function endedPageComesBack(app: ElectronApplication, desk: Page): Promise<Page> {
  const gone = desk.waitForEvent("close");
  await desk.evaluate(() => window.close());
  await gone;
  const again = await pageOf(app, "desk");
  await expect(plank(again)).toBeVisible();
  expect(await kiosk(app)).toMatchObject({ kiosk: true, full: true });
  return again;
}
