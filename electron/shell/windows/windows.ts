import { join } from "node:path";
import { app, BrowserWindow, type BrowserWindowConstructorOptions, type Display, screen } from "electron";
import { keepAtHome } from "../scheme/guard.ts";
import { type DeskHost, type Host, originOf } from "../scheme/hosts.ts";
import { placeDesk } from "./desk-place.ts";
import { boardScreen } from "./displays.ts";
import { preferencesOf } from "./preferences.ts";

/** The windows of the app: always the desk's, and the big screen's when wanted. */
export interface Windows {
  /** The laptop's one window for people, whichever of its hosts it shows. */
  desk(): BrowserWindow;
  /** Opens that window anew with the pages of another host; a device is alone and fills its display. */
  show(host: DeskHost): void;
  openBoard(): void;
  closeBoard(): void;
  boardOpen(): boolean;
  /** Makes the desk's window fill its display, with no way out of it; or restores it. */
  shut(shut: boolean): void;
  /** Moves every window to its place, for when displays may have changed unnoticed. */
  settle(): void;
}

/** Ms before a reload: a page that crashes at once must not keep the computer busy. */
const reloadDelayMs = 1_000;
/** Windows in whose place another one came: the app goes on without them. */
const replaced = new WeakSet<BrowserWindow>();

/**
 * Opens the desk, and the big screen if there is a second display, and keeps both in place while displays come, go and
 * change. `first` is the desk's window if open already.
 */
export function openWindows(host: DeskHost, first = openDeskAlone(host)): Windows {
  let shown = host;
  let desk = first;
  let place = placeDesk(desk);
  let isShut = false;
  let board: BrowserWindow | undefined;
  let boardDisplay: number | null = null;
  let goesDown = false;

  function beside(): Display | undefined {
    if (desk.isDestroyed()) return undefined;
    return boardScreen(screen.getAllDisplays(), screen.getDisplayMatching(desk.getBounds()).id, boardDisplay);
  }
  function openBoard(): void {
    if (board !== undefined) {
      board.focus();
      return;
    }
    const display = beside();
    boardDisplay = display?.id ?? boardDisplay;
    board = makeBoard(display);
    board.on("closed", () => {
      board = undefined;
    });
  }
  function closeBoard(): void {
    // Destroyed, not asked to close: a shut desk refuses every request.
    board?.destroy();
  }
  function settle(mayOpen: boolean): void {
    place.settle();
    const display = beside();
    // Systems move a window to the remaining display, where it would cover the desk in full screen.
    if (display === undefined) closeBoard();
    else if (board !== undefined) fill(board, display);
    else if (mayOpen && shown === "desk") openBoard();
    boardDisplay = board === undefined ? boardDisplay : (display?.id ?? boardDisplay);
  }
  function shut(wanted: boolean): void {
    isShut = wanted;
    // On the desk's own display, the big screen would be a window over it that anybody can move.
    if (isShut && beside() === undefined) closeBoard();
    place.shut(isShut);
  }
  /** Reopens a shut desk: a page can close its own window without a request. */
  function comeBack(): void {
    if (isShut && !goesDown) reopen();
  }
  function reopen(): void {
    desk = openDeskAlone(shown);
    place = placeDesk(desk);
    place.shut(isShut);
    follow();
  }
  function follow(): void {
    const window = desk;
    window.on("closed", () => !replaced.has(window) && comeBack());
    if (shown === "device" && !isShut) window.once("show", () => window.setFullScreen(true));
  }
  function show(wanted: DeskHost): void {
    if (wanted === shown) return;
    shown = wanted;
    const was = desk;
    replaced.add(was);
    if (wanted === "device") closeBoard();
    reopen();
    // Destroyed, not asked to close: a shut desk refuses every request.
    was.destroy();
    settle(true);
  }

  app.on("before-quit", (event) => {
    // Whether a shut desk may end was decided by whoever listened before.
    goesDown = !event.defaultPrevented;
  });
  follow();
  if (shown === "desk" && beside() !== undefined) openBoard();
  screen.on("display-added", () => settle(true));
  screen.on("display-removed", () => settle(true));
  screen.on("display-metrics-changed", () => settle(false));
  return {
    desk: () => desk,
    show,
    openBoard,
    closeBoard,
    boardOpen: () => board !== undefined,
    shut,
    settle: () => settle(false),
  };
}

/** Brings a window to the front, even from the task bar. */
export function bringToFront(window: BrowserWindow): void {
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}

/** Opens the desk's window; the app ends with it. */
export function openDeskAlone(host: DeskHost = "desk"): BrowserWindow {
  // As small as a laptop's screen of 1024 x 768 on which everything is a quarter larger.
  const size = { width: 1280, height: 800, minWidth: 800, minHeight: 560 };
  const window = makeWindow(host, size, preferencesOfDesk(host));
  window.once("ready-to-show", () => window.show());
  window.on("closed", () => replaced.has(window) || app.quit());
  return window;
}

/** The pages of a device get no bridge: nothing of the organiser's is at a station. */
function preferencesOfDesk(host: DeskHost): BrowserWindowConstructorOptions["webPreferences"] {
  // Its clock goes on behind other windows, as a big screen's does.
  if (host === "device") return { backgroundThrottling: false };
  return { preload: join(import.meta.dirname, "../preload/preload.cjs") };
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
  // A window in full screen would stay on its current display.
  if (window.isFullScreen()) window.setFullScreen(false);
  window.setBounds(display.bounds);
  window.setFullScreen(true);
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
  keepAtHome(window.webContents, host);
  void window.loadURL(`${originOf(host)}/`);
  return window;
}
