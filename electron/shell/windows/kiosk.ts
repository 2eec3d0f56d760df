import { app, type BrowserWindow, powerMonitor, type WebContents } from "electron";
import type { Desk } from "../../api/door/desk.ts";
import { runsAtTable } from "../../api/heat/running.ts";
import { mayPress } from "./kiosk-keys.ts";
import { setMenu } from "./menu.ts";
import type { Windows } from "./windows.ts";

/** The kiosk mode of the desk's window: closed to everything but what its role may do. */
export interface Kiosk {
  readonly isShut: () => boolean;
  /** From now on the windows follow the desk's lock. */
  follow(desk: Desk, windows: Windows): void;
}

/** Ms that displays need to return after the computer wakes. */
const afterSleepMs = 2_000;
/** Ms between checks whether anybody is at the desk. */
const lookEveryMs = 5_000;

/**
 * Closes every way out of a locked or handed-over desk that a program can close: keys, navigation, closing, quitting.
 * Must be called before the app is ready. Without a PIN it never shuts.
 */
export function setupKiosk(): Kiosk {
  let shut = false;
  let goingDown = false;
  const isShut = () => shut && !goingDown;
  let touched = () => {};

  app.on("web-contents-created", (_event, contents) => {
    guardContents(contents, isShut);
    contents.on("input-event", () => touched());
  });
  app.on("browser-window-created", (_event, window) => guardWindow(window, isShut));
  app.on("before-quit", (event) => {
    // Cmd+Q, and any other request to end the program.
    if (isShut()) event.preventDefault();
  });

  function follow(desk: Desk, windows: Windows): void {
    function apply(): void {
      const wanted = desk.lock.who().role !== "organiser";
      if (wanted === shut) return;
      shut = wanted;
      setMenu(shut);
      windows.shut(shut);
    }
    apply();
    desk.news.listen(({ topics }) => {
      if (topics.includes("lock")) apply();
    });
    touched = desk.lock.touch;
    lockByItself(desk, windows);
    powerMonitor.on("shutdown", () => {
      // The computer shuts down: delaying it would only cost other programs' work.
      goingDown = true;
      app.quit();
    });
  }
  return { isShut, follow };
}

/** Locks the organiser's desk when nobody is there: for too long, or because the computer sleeps. */
function lockByItself(desk: Desk, windows: Windows): void {
  const timer = setInterval(() => desk.lock.lookAtIdle(runsAtTable(desk)), lookEveryMs);
  app.on("will-quit", () => clearInterval(timer));
  function asleep(): void {
    if (!runsAtTable(desk)) desk.lock.lock("sleep");
  }
  powerMonitor.on("suspend", asleep);
  powerMonitor.on("lock-screen", asleep);
  powerMonitor.on("resume", () => {
    // For systems that did not announce their sleep.
    asleep();
    setTimeout(() => windows.settle(), afterSleepMs);
  });
}

function guardContents(contents: WebContents, isShut: () => boolean): void {
  contents.on("before-input-event", (event, input) => {
    if (input.type !== "keyDown" || !isShut()) return;
    if (!mayPress(input, process.platform === "darwin")) event.preventDefault();
  });
  contents.on("will-frame-navigate", (event) => {
    if (isShut()) event.preventDefault();
  });
  contents.on("context-menu", (event) => {
    if (isShut()) event.preventDefault();
  });
  contents.on("devtools-opened", () => {
    if (isShut()) contents.closeDevTools();
  });
}

function guardWindow(window: BrowserWindow, isShut: () => boolean): void {
  // Alt+F4 and the close button arrive here; windows closed by the shell are destroyed instead.
  window.on("close", (event) => {
    if (isShut()) event.preventDefault();
  });
  window.on("minimize", () => {
    if (isShut()) window.restore();
  });
  // The menu of a title bar (Windows).
  window.on("system-context-menu", (event) => {
    if (isShut()) event.preventDefault();
  });
}
