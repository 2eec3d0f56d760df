import { type BrowserWindow, type Rectangle, screen } from "electron";
import { type Home, homeOf, placeOnDisplay, sameRectangle } from "./displays.ts";

/** Keeps the desk's window where the person put it. */
export interface DeskPlace {
  /** Moves it to its place, after displays have changed. */
  settle(): void;
  /** Makes it fill its display, or restores it. */
  shut(shut: boolean): void;
}

/** Ms without a display change before a move counts as the person's: systems move windows too, and first. */
const restMs = 1_500;
/** Ms after a display change, or after a move of our own, in which moves are not the person's. */
const quietMs = 3_000;

/** Remembers where the person puts the desk's window, to move it back there when a missing display returns. */
export function placeDesk(window: BrowserWindow): DeskPlace {
  let home = here();
  let isShut = false;
  let timer: NodeJS.Timeout | undefined;
  let quietUntil = 0;

  function here(): Home {
    const bounds = window.getNormalBounds();
    return homeOf(bounds, screen.getDisplayMatching(bounds));
  }
  function moved(): void {
    if (performance.now() < quietUntil) return;
    clearTimeout(timer);
    timer = setTimeout(() => {
      if (!window.isDestroyed() && isFree()) home = here();
    }, restMs);
  }
  /** From now on, moves are ours and not the person's. */
  function ignoreMoves(): void {
    clearTimeout(timer);
    quietUntil = performance.now() + quietMs;
  }
  function isFree(): boolean {
    return !isShut && !window.isFullScreen() && !window.isMinimized() && !window.isMaximized();
  }
  function place(): Rectangle {
    return placeOnDisplay(home, screen.getAllDisplays(), screen.getDisplayMatching(window.getBounds()));
  }
  function fillDisplay(): void {
    const display = screen.getAllDisplays().find(({ id }) => id === home.display);
    const { bounds } = display ?? screen.getDisplayMatching(window.getBounds());
    if (sameRectangle(window.getBounds(), bounds) && window.isKiosk()) return;
    // A window in full screen would stay on its current display.
    if (window.isFullScreen()) window.setFullScreen(false);
    window.setBounds(bounds);
    window.setKiosk(true);
    // By itself it differs from system to system.
    window.setFullScreen(true);
  }
  function enter(): void {
    home = window.isFullScreen() || window.isMinimized() ? home : here();
    isShut = true;
    window.setMinimizable(false);
    window.setAlwaysOnTop(true);
    fillDisplay();
    window.focus();
  }
  function leave(): void {
    isShut = false;
    window.setAlwaysOnTop(false);
    window.setMinimizable(true);
    window.setKiosk(false);
    window.setFullScreen(false);
    window.setBounds(place());
  }

  // `moved` and `resized`, which fire once, don't exist on every system.
  window.on("move", moved);
  window.on("resize", moved);
  window.on("closed", () => clearTimeout(timer));
  return {
    settle() {
      ignoreMoves();
      if (window.isDestroyed() || window.isMinimized()) return;
      if (isShut) fillDisplay();
      else if (isFree() && !sameRectangle(window.getBounds(), place())) window.setBounds(place());
    },
    shut(shut) {
      if (window.isDestroyed() || shut === isShut) return;
      ignoreMoves();
      if (shut) enter();
      else leave();
    },
  };
}
