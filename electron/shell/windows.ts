import { join } from "node:path";
import { app, BrowserWindow, type BrowserWindowConstructorOptions, type Display, screen } from "electron";
import { type Host, originOf } from "./hosts.ts";
import { preferencesOf } from "./preferences.ts";

/** The windows of the app: the desk's, always, and the hall's board when it is wanted. */
export interface Windows {
  desk(): BrowserWindow;
  openBoard(): void;
  closeBoard(): void;
  boardOpen(): boolean;
}

/** Long enough that a page which crashes at once does not keep the machine busy. */
const reloadDelayMs = 1_000;

/**
 * Opens the desk, and the board where there is a second display, and keeps the board in step with displays that
 * come and go. `desk` is the desk's window where it is open already.
 */
export function openWindows(desk = openDeskAlone()): Windows {
  let board: BrowserWindow | undefined;

  function openBoard(): void {
    if (board !== undefined) {
      board.focus();
      return;
    }
    board = makeBoard(displayBeside(desk));
    board.on("closed", () => {
      board = undefined;
    });
  }
  function closeBoard(): void {
    board?.close();
  }
  function followDisplays(): void {
    const beside = displayBeside(desk);
    // Systems move a window to the display that is left, where it would lie full screen over the desk.
    if (beside === undefined) closeBoard();
    else if (board === undefined) openBoard();
    else fill(board, beside);
  }

  if (displayBeside(desk) !== undefined) openBoard();
  screen.on("display-added", followDisplays);
  screen.on("display-removed", followDisplays);
  return { desk: () => desk, openBoard, closeBoard, boardOpen: () => board !== undefined };
}

/** Brings a window to the front, from the task bar too. */
export function bringToFront(window: BrowserWindow): void {
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}

/** Opens the desk's window; the app ends with it. */
export function openDeskAlone(): BrowserWindow {
  const size = { width: 1280, height: 800, minWidth: 1024, minHeight: 700 };
  const window = makeWindow("desk", size, { preload: join(import.meta.dirname, "../preload/preload.cjs") });
  window.once("ready-to-show", () => window.show());
  window.on("closed", () => app.quit());
  return window;
}

function makeBoard(display: Display | undefined): BrowserWindow {
  const place = display?.bounds ?? { width: 1280, height: 720, useContentSize: true };
  const window = makeWindow("board", place, { backgroundThrottling: false });
  window.once("ready-to-show", () => {
    // The keyboard stays with the desk.
    window.showInactive();
    if (display !== undefined) fill(window, display);
  });
  return window;
}

function fill(window: BrowserWindow, display: Display): void {
  // A window that is full screen already would stay on the display it is on.
  if (window.isFullScreen()) window.setFullScreen(false);
  window.setBounds(display.bounds);
  window.setFullScreen(true);
}

/** A display that the desk is not on: the hall's. */
function displayBeside(desk: BrowserWindow): Display | undefined {
  if (desk.isDestroyed()) return undefined;
  const own = screen.getDisplayMatching(desk.getBounds()).id;
  return screen.getAllDisplays().find((display) => display.id !== own);
}

function makeWindow(
  host: Host,
  place: BrowserWindowConstructorOptions,
  preferences: BrowserWindowConstructorOptions["webPreferences"],
): BrowserWindow {
  const window = new BrowserWindow({
    ...place,
    show: false,
    autoHideMenuBar: true,
    webPreferences: { ...preferences, ...preferencesOf(host) },
  });
  window.webContents.on("render-process-gone", () => {
    setTimeout(() => !window.isDestroyed() && window.webContents.reload(), reloadDelayMs);
  });
  void window.loadURL(`${originOf(host)}/`);
  return window;
}
