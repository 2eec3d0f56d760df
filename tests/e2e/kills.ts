import { randomUUID } from "node:crypto";
import { once } from "node:events";
import { setTimeout as wait } from "node:timers/promises";
import type { ElectronApplication } from "@playwright/test";
import { expect } from "@playwright/test";
import type { Eyes, Keys } from "./live.ts";
import type { Tapeline } from "./session.ts";

/** A window reached through the shell: the runner gives a page up for good once it has crashed. */
export interface DeskWindow extends Eyes, Keys {}

function deskWindow(app: ElectronApplication): DeskWindow {
  let pressed = 0;
  return {
    evaluate: (script) =>
      answered(() =>
        app.evaluate(({ BrowserWindow }, source) => {
          const [window] = BrowserWindow.getAllWindows();
          return window?.webContents.executeJavaScript(source);
        }, script),
      ),
    async press(keyCode) {
      pressed += 1;
      const press = { keyCode, id: randomUUID() };
      await answered(() =>
        app.evaluate(({ app: main, BrowserWindow }, { keyCode, id }) => {
          // Asked again, it must not press again: the program's own list of listeners remembers what was done.
          if (main.listenerCount(id as "activate") > 0) return;
          main.on(id as "activate", () => {});
          const contents = BrowserWindow.getAllWindows()[0]?.webContents;
          contents?.sendInputEvent({ type: "keyDown", keyCode });
          contents?.sendInputEvent({ type: "keyUp", keyCode });
        }, press),
      );
    },
    pressed: () => pressed,
  };
}

/** Asks the main process again where the runner lost its answer to the garbage collector (its issue 33737). */
async function answered<Answer>(ask: () => Promise<Answer>): Promise<Answer> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await ask();
    } catch (error) {
      if (tries === 3 || !String(error).includes("garbage collected")) throw error;
    }
  }
}

/** Kills the page's process as a crash does, and waits until its window shows the desk again, which it does by itself. */
export async function killPage({ app }: Tapeline): Promise<DeskWindow> {
  const killed = await app.evaluate(({ BrowserWindow }) => {
    const id = BrowserWindow.getAllWindows()[0]?.webContents.getOSProcessId() ?? 0;
    process.kill(id, "SIGKILL");
    return id;
  });
  // Asked again and again: an event that the runner misses would be waited for without end.
  await expect.poll(() => Promise.race([isBack(app, killed), wait(askAgainMs, false)])).toBe(true);
  return deskWindow(app);
}

/** How long one question may go unanswered: a page that is just being killed answers nothing. */
const askAgainMs = 5_000;

/** Whether the window has a page of another process, and that page shows its data. */
function isBack(app: ElectronApplication, killed: number): Promise<boolean> {
  return answered(() =>
    app.evaluate(({ BrowserWindow }, killed) => {
      const contents = BrowserWindow.getAllWindows()[0]?.webContents;
      if (contents === undefined || contents.isCrashed() || contents.isLoading()) return false;
      if (contents.getOSProcessId() === killed) return false;
      return contents.executeJavaScript("document.documentElement.dataset.ready === 'true'");
    }, killed),
  );
}

/** Kills the whole program as a power cut does, and starts it again on the same data. */
export async function killApp(tapeline: Tapeline): Promise<void> {
  const program = tapeline.app.process();
  const gone = once(program, "exit");
  program.kill("SIGKILL");
  await gone;
  await tapeline.restart();
}
