import { type BrowserWindow, type Rectangle, screen } from "electron";
import { type Home, homeOf, placeOnDisplay, sameRectangle } from "./displays.ts";

/** Keeps the desk's window where the person put it. */
export interface DeskPlace {
  /** Puts it where it belongs, after displays have changed. */
  settle(): void;
  /** Makes it all that its display shows, or again what it was. */
  shut(shut: boolean): void;
}

/** A move counts as the person's when no display changes within so long: systems move windows too, and first. */
const restMs = 1_500;
/** So long after a display has changed, or the window was put somewhere from here, its moves are not the person's. */
const quietMs = 3_000;

/** Follows where the person puts the desk's window, to bring it back there when a display that was gone returns. */
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
  /** What moves now is not the person. */
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
    // A window that is full screen already would stay on the display it is on.
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

  // `moved` and `resized`, which come once, are not told on every system.
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
