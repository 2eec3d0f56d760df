import { type ElectronApplication, expect, type Locator, type Page } from "@playwright/test";

/** What a test sends with a request. */
export interface Sent {
  readonly method?: string;
  readonly body?: string;
  readonly headers?: Record<string, string>;
}

/** What a page gets for a request, as its own script sees it: the status, or the kind of failure. */
export function statusOf(page: Page, url: string, init: Sent = {}): Promise<number | string> {
  return page.evaluate(
    ([address, options]) =>
      fetch(address, options).then(
        (response) => response.status,
        (error: unknown) => (error as Error).name,
      ),
    [url, init] as const,
  );
}

/**
 * Takes the content policy off a page and reads it again: what still holds then is held by the shell. A page that
 * somebody got a script into is no worse.
 */
export async function withoutContentPolicy(app: ElectronApplication, page: Page): Promise<void> {
  const session = await app.context().newCDPSession(page);
  await session.send("Page.setBypassCSP", { enabled: true });
  await page.reload();
}

/** Which ways elsewhere were refused to a page. */
export interface Refusals {
  /** Waits until an address was: by the shell, or by the page itself, which says so. */
  refused(address: string): Promise<void>;
}

/** Listens from now on to what refuses a page to be led away. */
export async function listenToRefusals(app: ElectronApplication, page: Page): Promise<Refusals> {
  const said: string[] = [];
  page.on("console", (message) => said.push(message.text()));
  await app.evaluate(({ webContents }) => {
    const refused: string[] = [];
    // After the shell's own listener, so that what it decided is seen.
    for (const contents of webContents.getAllWebContents()) {
      contents.on("will-frame-navigate", ({ url, defaultPrevented }) => {
        if (defaultPrevented) refused.push(url);
      });
    }
    Object.assign(globalThis, { refusedToPages: refused });
  });
  const byShell = () => app.evaluate(() => Reflect.get(globalThis, "refusedToPages") as string[]);
  return {
    async refused(address) {
      const all = async () => [
        ...(await byShell()),
        ...said.filter((text) => /^(?:Not allowed|Refused)/.test(text)),
      ];
      await expect.poll(async () => (await all()).some((each) => each.includes(address)), address).toBe(true);
    },
  };
}

/** Runs a script that is written into the page itself; says whether it ran. */
export function inlineScriptRuns(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const script = document.createElement("script");
    try {
      script.textContent = "document.documentElement.dataset.inline = 'ran'";
    } catch {
      // Under our own policy even the text of a script is refused; an empty one then runs nothing.
    }
    document.body.append(script);
    return document.documentElement.dataset.inline === "ran";
  });
}

/** Goes to a place of the day by its name on the tape, as a press there does. */
export async function goTo(desk: Page, place: string): Promise<void> {
  const tape = desk.getByRole("navigation", { name: "Screens" });
  await tape.getByRole("link", { name: place, exact: true }).click();
}

/** Calls a procedure as the page's own client does, for what takes too long by hand. Returns what it answers. */
export async function callDoor(page: Page, procedure: string, input?: unknown): Promise<unknown> {
  const body = input === undefined ? "{}" : JSON.stringify(input);
  const answer = await page.evaluate(
    async ([path, sent]) => {
      const headers = { "content-type": "application/json" };
      const response = await fetch(`/trpc/${path}`, { method: "POST", headers, body: sent });
      return { status: response.status, json: await response.json() };
    },
    [procedure, body] as const,
  );
  if (answer.status !== 200) throw new Error(`${procedure}: ${JSON.stringify(answer.json)}`);
  return answer.json.result.data;
}

/** Chooses one of a few: the option's own name, within the group's. */
export async function choose(within: Page | Locator, group: string, option: string): Promise<void> {
  await within.getByRole("radiogroup", { name: group }).getByText(option, { exact: true }).click();
}

/** Leads a page to an empty one that nobody is asked about, and waits until its own is gone. */
export async function goToNothing(page: Page, address = "about:blank"): Promise<void> {
  await page.evaluate((url) => {
    Reflect.set(window, "beforeNothing", true);
    location.href = url;
  }, address);
  // Asked again and again: a page that goes answers nobody.
  const isBefore = () => page.evaluate(() => Reflect.get(window, "beforeNothing") === true).catch(() => true);
  while (await isBefore()) await page.waitForTimeout(50);
}
