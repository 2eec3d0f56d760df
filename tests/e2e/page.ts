import type { ElectronApplication, Page } from "@playwright/test";

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

/** Runs a script that is written into the page itself; says whether it ran. */
export function inlineScriptRuns(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "document.documentElement.dataset.inline = 'ran'";
    document.body.append(script);
    return document.documentElement.dataset.inline === "ran";
  });
}
