import type { Page } from "@playwright/test";

/** What is looked at in a page to know that it shows something new. */
export type Figure = "everything" | "tests done";

interface Watched {
  arm(): void;
  painted(): Promise<number>;
}

/**
 * From now on the page knows when it has painted a change: the first frame after its document changed is over, and
 * what is looked at differs from when it was armed.
 */
export function watchPaints(page: Page, figure: Figure): Promise<void> {
  return page.evaluate((looked) => {
    const read = () =>
      looked === "everything"
        ? (document.querySelector("main")?.textContent ?? "")
        : (/(\d+) tests? done/.exec(document.body.textContent ?? "")?.[1] ?? "none");
    let armed = "";
    let settle: (at: number) => void = () => {};
    let painted = new Promise<number>(() => {});
    const frameOver = new MessageChannel();
    frameOver.port1.onmessage = () => settle(performance.timeOrigin + performance.now());
    const observer = new MutationObserver(() => {
      // The callback of a frame runs before it is painted, the message after it.
      if (read() !== armed) requestAnimationFrame(() => frameOver.port2.postMessage(null));
    });
    observer.observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
      attributes: true,
    });
    const watched: Watched = {
      arm() {
        armed = read();
        painted = new Promise<number>((resolve) => {
          settle = resolve;
        });
      },
      painted: () => painted,
    };
    Object.assign(window, { watched });
  }, figure);
}

/** What the page shows now is old: the next paint that differs counts. */
export function armPaint(page: Page): Promise<void> {
  return page.evaluate(() => (window as unknown as { watched: Watched }).watched.arm());
}

/** When the page painted something new since it was armed, in ms of the wall clock; waits for it. */
export function paintedAt(page: Page): Promise<number> {
  return page.evaluate(() => (window as unknown as { watched: Watched }).watched.painted());
}
