import { randomUUID } from "node:crypto";
import { once } from "node:events";
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
export async function killPage({ app, desk }: Tapeline): Promise<DeskWindow> {
  const crashed = desk.waitForEvent("crash");
  await app.evaluate(({ BrowserWindow }) => {
    const contents = BrowserWindow.getAllWindows()[0]?.webContents;
    return new Promise<void>((resolve) => {
      contents?.once("did-finish-load", () => resolve());
      process.kill(contents?.getOSProcessId() ?? 0, "SIGKILL");
    });
  });
  await crashed;
  const window = deskWindow(app);
  const ready = () => window.evaluate("document.documentElement.dataset.ready");
  await expect.poll(ready).toBe("true");
  return window;
}

/** Kills the whole program as a power cut does, and starts it again on the same data. */
export async function killApp(tapeline: Tapeline): Promise<void> {
  const program = tapeline.app.process();
  const gone = once(program, "exit");
  program.kill("SIGKILL");
  await gone;
  await tapeline.restart();
}
