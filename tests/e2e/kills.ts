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
      app.evaluate(({ BrowserWindow }, source) => {
        const [window] = BrowserWindow.getAllWindows();
        return window?.webContents.executeJavaScript(source);
      }, script),
    async press(key) {
      pressed += 1;
      await app.evaluate(({ BrowserWindow }, keyCode) => {
        const contents = BrowserWindow.getAllWindows()[0]?.webContents;
        contents?.sendInputEvent({ type: "keyDown", keyCode });
        contents?.sendInputEvent({ type: "keyUp", keyCode });
      }, key);
    },
    pressed: () => pressed,
  };
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
