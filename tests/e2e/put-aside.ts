import { expect } from "@playwright/test";
import type { Tapeline } from "./session.ts";

/**
 * What a page puts aside is on its way to the process that keeps it, and a kill may take it along: waits until another
 * page, in a process of its own, is given it too. That page is no page of the app, only of the same origin.
 */
export async function isPutAside({ app }: Tapeline, words: string): Promise<void> {
  const own = await app.evaluate(async ({ BrowserWindow, session }) => {
    const window = new BrowserWindow({
      show: false,
      webPreferences: { session: session.fromPartition("desk") },
    });
    await window.loadURL("app://desk/nothing-there");
    const processes = BrowserWindow.getAllWindows().map((each) => each.webContents.getOSProcessId());
    return { id: window.id, isAlone: new Set(processes).size === processes.length };
  });
  expect(own.isAlone).toBe(true);
  const kept = () =>
    app.evaluate(
      ({ BrowserWindow }, id) =>
        BrowserWindow.fromId(id)?.webContents.executeJavaScript("JSON.stringify({ ...localStorage })"),
      own.id,
    );
  await expect.poll(async () => Object.values(JSON.parse(await kept())).join("\n")).toContain(words);
  await app.evaluate(({ BrowserWindow }, id) => {
    const window = BrowserWindow.fromId(id);
    if (window === null) return;
    return new Promise<void>((resolve) => {
      window.webContents.once("destroyed", () => resolve());
      window.destroy();
    });
  }, own.id);
}
