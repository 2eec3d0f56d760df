import type { Page } from "@playwright/test";

/**
 * Makes of a page that has joined one that does nothing but paint how many entries the change feed has told it: it reads
 * nothing and draws one number. What it takes is the machine's, the network's and the browser's, and no screen can be faster.
 */
export async function makeBare(page: Page): Promise<void> {
  // A sheet of the build's, shown as text: a document of the table's own, with its headers, and no script of the program's.
  const sheet = await page.evaluate(
    () => document.querySelector<HTMLLinkElement>("link[rel=stylesheet]")?.href,
  );
  if (sheet === undefined) throw new Error("The page has no sheet.");
  await page.evaluate((url) => location.assign(url), sheet);
  await page.waitForURL(sheet);
  await page.evaluate(() => {
    const counted: { count: number; at: number }[] = [];
    let count = 0;
    const frameOver = new MessageChannel();
    frameOver.port1.onmessage = ({ data }: MessageEvent<number>) =>
      counted.push({ count: data, at: performance.timeOrigin + performance.now() });
    document.body.textContent = "0";
    new EventSource("/trpc/changes").addEventListener("message", ({ data }: MessageEvent<string>) => {
      const { topics } = JSON.parse(data) as { readonly topics?: readonly string[] };
      if (topics?.includes("attempts") !== true) return;
      count += 1;
      document.body.textContent = `${count}`;
      // The callback of a frame runs before it is painted, the message after it.
      requestAnimationFrame(() => frameOver.port2.postMessage(count));
    });
    Object.assign(globalThis, { counted });
  });
}
