import type { ElectronApplication, Page } from "@playwright/test";

/** Where the further windows are: screens that read much again at every change. */
const places = ["/station/push-up", "/station/vertical", "/people", "/check-in"];

/**
 * Four windows more with the desk's page, session and preferences. The program opens no second desk: they are made from
 * outside, and stand for four more readers.
 */
export async function openStations(app: ElectronApplication): Promise<Page[]> {
  const pages: Page[] = [];
  for (const place of places) {
    const opened = app.waitForEvent("window");
    await app.evaluate(({ BrowserWindow }, hash) => {
      const desk = BrowserWindow.getAllWindows().find(({ webContents }) =>
        webContents.getURL().startsWith("app://desk/"),
      );
      if (desk === undefined) throw new Error("There is no desk.");
      const preferences = (
        desk.webContents as unknown as { getLastWebPreferences(): object }
      ).getLastWebPreferences();
      const { session } = desk.webContents;
      const extra = new BrowserWindow({
        width: 1280,
        height: 800,
        webPreferences: { ...preferences, session },
      });
      void extra.loadURL(`${desk.webContents.getURL().split("#")[0]}#${hash}`);
    }, place);
    const page = await opened;
    await page.waitForFunction(() => document.documentElement.dataset.ready === "true");
    pages.push(page);
  }
  return pages;
}

/** Everything that pages complain of, from now on. */
export function hearErrors(app: ElectronApplication): string[] {
  const errors: string[] = [];
  const listen = (page: Page) => {
    page.on("pageerror", (error) => errors.push(`${page.url()}: ${error.message}`));
    page.on("crash", () => errors.push(`${page.url()}: crashed`));
    page.on("console", (message) => {
      if (message.type() === "error" || message.type() === "warning")
        errors.push(`${page.url()}: ${message.text()}`);
    });
  };
  for (const page of app.windows()) listen(page);
  app.on("window", listen);
  return errors;
}

export interface Counted {
  readonly count: number;
  readonly at: number;
}

/** From now on the board notes when it has painted each new count of tests done. */
export function watchCount(board: Page): Promise<void> {
  return board.evaluate(() => {
    const counted: { count: number; at: number }[] = [];
    const read = () =>
      Number(/([\d,.]+) tests? done/.exec(document.body.textContent ?? "")?.[1]?.replace(/\D/g, "") ?? 0);
    let waiting = 0;
    const frameOver = new MessageChannel();
    frameOver.port1.onmessage = () =>
      counted.push({ count: waiting, at: performance.timeOrigin + performance.now() });
    const observer = new MutationObserver(() => {
      const count = read();
      if (count === waiting) return;
      waiting = count;
      // The callback of a frame runs before it is painted, the message after it.
      requestAnimationFrame(() => frameOver.port2.postMessage(null));
    });
    observer.observe(document.body, { subtree: true, childList: true, characterData: true });
    Object.assign(globalThis, { counted });
  });
}

/** The counts that were painted, in their order. */
export function countedAt(board: Page): Promise<readonly Counted[]> {
  return board.evaluate(() => Reflect.get(globalThis, "counted") as Counted[]);
}
