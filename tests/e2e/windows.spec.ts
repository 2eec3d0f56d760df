import { type ElectronApplication, expect } from "@playwright/test";
import { pageOf } from "./launch.ts";
import { callDoor } from "./page.ts";
import { test } from "./shared.ts";

test("the desk opens at its size and goes no smaller", async ({ tapeline }) => {
  const desk = await tapeline.app.evaluate(({ BrowserWindow }) => {
    const [window] = BrowserWindow.getAllWindows();
    return [window?.getSize(), window?.getMinimumSize(), window?.isVisible(), window?.isMenuBarVisible()];
  });
  expect(desk).toEqual([[1280, 800], [800, 560], true, false]);
});

test("the board opens once, beside the desk, and closes alone", async ({ tapeline }) => {
  const board = await tapeline.openBoard();
  expect(await board.evaluate(() => [location.host, innerWidth / innerHeight])).toEqual(["board", 16 / 9]);
  await tapeline.openBoard();
  expect(tapeline.app.windows()).toHaveLength(2);
  expect(await tapeline.bridge((bridge) => bridge.boardOpen())).toBe(true);
  const closed = board.waitForEvent("close");
  await tapeline.bridge((bridge) => bridge.closeBoard());
  await closed;
  expect(await tapeline.bridge((bridge) => bridge.boardOpen())).toBe(false);
  expect(tapeline.app.windows()).toHaveLength(1);
});

test("a screen that fails says so, in place of an empty window, and comes back by a button", async ({
  tapeline: { desk },
}) => {
  await callDoor(desk, "day.openDemo");
  await desk.evaluate(() => {
    location.hash = "#/station/core";
  });
  await expect(desk.getByRole("heading", { level: 1 })).toContainText("Staged plank");
  await desk.evaluate(() => {
    HTMLInputElement.prototype.select = () => {
      throw new Error("A field can't be selected.");
    };
  });
  await desk.getByRole("button", { name: /^Enter from paper/ }).click();
  await expect(desk.getByRole("heading", { name: "This screen has stopped" })).toBeVisible();
  await desk.screenshot({ path: test.info().outputPath("stopped.png") });
  await desk.getByRole("button", { name: "Show it again" }).click();
  await expect(desk.getByRole("heading", { level: 1 })).toContainText("Staged plank");
});

test("the zoom keys work without a menu", async ({ tapeline }) => {
  // Real key events of the window: those that the runner types go past it, straight into the page.
  const press = (keyCode: string) =>
    tapeline.app.evaluate(({ BrowserWindow }, key) => {
      const contents = BrowserWindow.getAllWindows()[0]?.webContents;
      contents?.sendInputEvent({ type: "keyDown", keyCode: key, modifiers: ["control"] });
      contents?.sendInputEvent({ type: "keyUp", keyCode: key, modifiers: ["control"] });
    }, keyCode);
  const zoom = () =>
    tapeline.app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows()[0]?.webContents.getZoomLevel(),
    );
  await press("=");
  await press("=");
  await expect.poll(zoom).toBe(2);
  await press("-");
  await expect.poll(zoom).toBe(1);
  await press("0");
  await expect.poll(zoom).toBe(0);
});

test("a second display gets the board at once, and takes it along when it goes", { tag: "@last" }, async ({
  tapeline,
}) => {
  const shown = tapeline.app.waitForEvent("window");
  const placed = await plugInDisplay(tapeline.app);
  expect(placed).toMatchObject({ x: 960, y: 0, width: 960, height: 540 });
  const board = await pageOf(tapeline.app, "board");
  expect((await shown) === board).toBe(true);
  await expect.poll(() => boardIsFullScreen(tapeline.app)).toBe(true);
  const displays = await tapeline.bridge((bridge) => bridge.displays());
  expect(displays).toMatchObject([{ primary: true }, { id: 4711, primary: false }]);
  const closed = board.waitForEvent("close");
  await unplugDisplay(tapeline.app);
  await closed;
  expect(await tapeline.bridge((bridge) => bridge.boardOpen())).toBe(false);
});

test("a board that is open already moves to a second display", { tag: "@last" }, async ({ tapeline }) => {
  const board = await tapeline.openBoard();
  expect(await boardIsFullScreen(tapeline.app)).toBe(false);
  expect(await plugInDisplay(tapeline.app)).toBeNull();
  await expect.poll(() => boardIsFullScreen(tapeline.app)).toBe(true);
  expect(board.isClosed()).toBe(false);
});

test("a desk whose display goes is whole on the one that is left, and goes back when the display comes again", async ({
  tapeline,
}) => {
  const { app, clock } = tapeline;
  await clock.hold();
  await fakeDisplays(app, "display-added", true);
  // Moves count as the person's once no display has changed for a moment, and no other move comes.
  await clock.pass(3_000);
  const home = { x: 850, y: 100, width: 1030, height: 710 };
  await moveDesk(app, home);
  await fakeDisplays(app, "display-removed", false);
  await expect.poll(() => deskBounds(app)).toEqual({ ...home, x: 50 });
  await fakeDisplays(app, "display-added", true);
  await expect.poll(() => deskBounds(app)).toEqual(home);
});

test("a page that crashes comes back where it was", { tag: "@last" }, async ({ tapeline }) => {
  await tapeline.desk.evaluate(() => {
    location.hash = "#/backups";
  });
  const url = "app://desk/#/backups";
  // The window hears of it a moment after the page.
  const shown = () =>
    tapeline.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.webContents.getURL());
  await expect.poll(shown).toBe(url);
  const loaded = tapeline.app.evaluate(
    ({ BrowserWindow }) =>
      new Promise<string | undefined>((resolve) => {
        const contents = BrowserWindow.getAllWindows()[0]?.webContents;
        contents?.once("did-finish-load", () => resolve(contents.getURL()));
        contents?.forcefullyCrashRenderer();
      }),
  );
  expect(await loaded).toBe(url);
});

/**
 * Lets the shell see a second display: the right half of the one there is stands for it. Returns where a window was
 * made for it, or null when none was.
 */
function plugInDisplay(app: ElectronApplication) {
  return app.evaluate(({ app: main, screen }) => {
    const first = screen.getPrimaryDisplay();
    const second = { ...first, id: 4711, bounds: { x: 960, y: 0, width: 960, height: 540 } };
    const made: Electron.BrowserWindow[] = [];
    main.once("browser-window-created", (_event, window) => made.push(window));
    Object.assign(screen, { getAllDisplays: () => [first, second] });
    screen.emit("display-added", {}, second);
    return made[0]?.getBounds() ?? null;
  });
}

function unplugDisplay(app: ElectronApplication) {
  return app.evaluate(({ screen }) => {
    Object.assign(screen, { getAllDisplays: () => [screen.getPrimaryDisplay()] });
    screen.emit("display-removed", {}, { id: 4711 });
  });
}

/** Two displays that lie over each other in the one there is: from 0 to 1100 the laptop's, from 800 on another. */
function fakeDisplays(app: ElectronApplication, event: "display-added" | "display-removed", both: boolean) {
  return app.evaluate(
    ({ screen }, [name, isThere]) => {
      const real = screen.getPrimaryDisplay();
      const make = (id: number, x: number, width: number) => {
        const bounds = { x, y: 0, width, height: 1080 };
        return { ...real, id, bounds, workArea: bounds };
      };
      const [laptop, other] = [make(real.id, 0, 1100), make(4712, 800, 1120)];
      Object.assign(screen, {
        getAllDisplays: () => (isThere ? [laptop, other] : [laptop]),
        getDisplayMatching: ({ x }: Electron.Rectangle) => (isThere && x >= 800 ? other : laptop),
      });
      screen.emit(name, {}, other);
    },
    [event, both] as const,
  );
}

/** Moves the desk as a person does, and waits until it has rested for longer than the shell waits for, by the same loop. */
function moveDesk(app: ElectronApplication, to: Electron.Rectangle) {
  return app.evaluate(({ BrowserWindow }, bounds) => {
    const window = BrowserWindow.fromId(1);
    return new Promise<void>((resolve) => {
      let timer: NodeJS.Timeout | undefined;
      function restAgain(): void {
        clearTimeout(timer);
        timer = setTimeout(resolve, 1_600);
      }
      window?.on("move", restAgain);
      window?.on("resize", restAgain);
      window?.setBounds(bounds);
    });
  }, to);
}

function deskBounds(app: ElectronApplication) {
  return app.evaluate(({ BrowserWindow }) => BrowserWindow.fromId(1)?.getBounds());
}

function boardIsFullScreen(app: ElectronApplication) {
  return app.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows().some(
      (window) => window.webContents.getURL().startsWith("app://board/") && window.isFullScreen(),
    ),
  );
}
