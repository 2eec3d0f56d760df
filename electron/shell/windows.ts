import { join } from "node:path";
import { app, BrowserWindow, type BrowserWindowConstructorOptions, type Display, screen } from "electron";
import { type Host, originOf } from "./hosts.ts";
import { sessionOf } from "./scheme.ts";

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
 * come and go.
 */
export function openWindows(): Windows {
  const desk = openDeskAlone();
  let board: BrowserWindow | undefined;

  function openBoard(): void {
    if (board !== undefined) {
      board.focus();
      return;
    }
    const opened = makeBoard(secondDisplay());
    opened.on("closed", () => {
      board = undefined;
    });
    board = opened;
  }
  function closeBoard(): void {
    board?.close();
  }

  if (secondDisplay() !== undefined) openBoard();
  screen.on("display-added", () => {
    closeBoard();
    openBoard();
  });
  // Systems move a window to the display that is left, where it would lie full screen over the desk.
  screen.on("display-removed", closeBoard);
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
  const place = display === undefined ? { width: 1280, height: 720, useContentSize: true } : display.bounds;
  const window = makeWindow("board", place, { backgroundThrottling: false });
  // The keyboard stays with the desk.
  window.once("ready-to-show", () => {
    window.showInactive();
    if (display !== undefined) window.setFullScreen(true);
  });
  return window;
}

function secondDisplay(): Display | undefined {
  const primary = screen.getPrimaryDisplay().id;
  return screen.getAllDisplays().find((display) => display.id !== primary);
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
    webPreferences: {
      ...preferences,
      session: sessionOf(host),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
      spellcheck: false,
      devTools: !app.isPackaged,
    },
  });
  window.webContents.on("render-process-gone", () => {
    setTimeout(() => !window.isDestroyed() && window.webContents.reload(), reloadDelayMs);
  });
  void window.loadURL(`${originOf(host)}/`);
  return window;
}
