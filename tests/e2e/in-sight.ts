import type { CDPSession, Page } from "@playwright/test";

/** A window's page, in CSS px, and how many px of the screen each of them is. */
interface Screen {
  readonly width: number;
  readonly height: number;
  readonly scale: number;
}

/** Screens of small laptops, as they are and with everything a quarter larger. From memory: the usual ones, no source. */
export const smallScreens: readonly Screen[] = [
  ...[
    [1280, 800],
    [1366, 768],
    [1024, 768],
  ].flatMap(([width = 0, height = 0]) =>
    [1, 1.25].map((scale) => ({
      width: Math.floor(width / scale),
      height: Math.floor(height / scale),
      scale,
    })),
  ),
];

export function nameOf({ width, height, scale }: Screen): string {
  return `${width} × ${height} at ${scale * 100} %`;
}

const sessions = new WeakMap<Page, Promise<CDPSession>>();

/** One for each page: every one more is told all over again what happens in it. */
function sessionOf(page: Page): Promise<CDPSession> {
  const session = sessions.get(page) ?? page.context().newCDPSession(page);
  sessions.set(page, session);
  return session;
}

/** Gives a page the size and the scale that it has on such a screen. */
export async function showOn(page: Page, { width, height, scale }: Screen): Promise<void> {
  const session = await sessionOf(page);
  await session.send("Emulation.setDeviceMetricsOverride", {
    ...{ width, height, deviceScaleFactor: scale, mobile: false },
  });
  await page.waitForFunction(([w, h]) => innerWidth === w && innerHeight === h, [width, height] as const);
  // What is measured by the page itself (`ResizeObserver`) is told with the next frames.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

/** Gives a page back the size and the scale of its window. */
export async function showAsItIs(page: Page): Promise<void> {
  await (await sessions.get(page))?.send("Emulation.clearDeviceMetricsOverride");
}

/**
 * What can't be seen whole or can't be pressed, of everything that matches: outside the window, cut off by what scrolls, or
 * with something else over it. Each is looked at in its middle and near its four corners.
 */
export function notInSight(page: Page, selector: string): Promise<string[]> {
  return page.evaluate((wanted) => {
    const looked = [...document.querySelectorAll(wanted)].filter((element) =>
      element.checkVisibility({ opacityProperty: true, visibilityProperty: true }),
    );
    if (looked.length === 0) return [`nothing matches ${wanted}`];
    return looked.flatMap((element) => {
      const why = trouble(element);
      return why === null ? [] : [`${nameOfElement(element)}: ${why}`];
    });

    function trouble(element: Element): string | null {
      const { left, top, right, bottom, width, height } = element.getBoundingClientRect();
      // For screen readers only.
      if (width <= 1 && height <= 1) return null;
      const box = [left, top, right, bottom].map(Math.round).join(" ");
      if (left < 0 || top < 0 || right > innerWidth + 0.5 || bottom > innerHeight + 0.5) {
        return `outside the window (${box})`;
      }
      const inside = Math.min(6, (right - left) / 3, (bottom - top) / 3);
      const [xs, ys] = [
        [left + inside, (left + right) / 2, right - inside],
        [top + inside, (top + bottom) / 2, bottom - inside],
      ];
      for (const x of xs) {
        for (const y of ys) {
          const hit = document.elementFromPoint(x, y);
          if (hit === null || !(element.contains(hit) || hit.contains(element) || isTorn(element, hit))) {
            return `${hit === null ? "nothing" : nameOfElement(hit)} lies over it at ${Math.round(x)} ${Math.round(y)} (${box})`;
          }
          if (hit !== element && hit.contains(element) && isCut(element, x, y)) return `cut off (${box})`;
        }
      }
      return null;
    }

    /** Whether a point lies outside what shows of an element in the boxes around it that scroll. */
    function isCut(element: Element, x: number, y: number): boolean {
      for (let at = element.parentElement; at !== null; at = at.parentElement) {
        if (getComputedStyle(at).overflow === "visible") continue;
        const { left, top, right, bottom } = at.getBoundingClientRect();
        if (x < left || x > right || y < top || y > bottom) return true;
      }
      return false;
    }

    /** A label is pressed in place of the control that it hides. */
    function isTorn(element: Element, hit: Element): boolean {
      const label = element.closest("label");
      return label?.contains(hit) === true;
    }

    function nameOfElement(element: Element): string {
      const said = element.getAttribute("aria-label") ?? element.textContent?.trim().replaceAll(/\s+/g, " ");
      return `<${element.tagName.toLowerCase()}> ${(said ?? "").slice(0, 50)}`;
    }
  }, selector);
}

/** How much wider the page is than its window, in px; what scrolls in a box of its own counts for that box. */
export function widerBy(page: Page): Promise<number> {
  return page.evaluate(() => {
    const rooms = [document.documentElement, document.querySelector("main")?.parentElement];
    return Math.max(...rooms.map((room) => (room == null ? 0 : room.scrollWidth - room.clientWidth)));
  });
}

/** Returns the texts of a table's cells that are cut. */
export function cutCells(page: Page): Promise<string[]> {
  return page
    .locator("tbody .one-line, tbody .two-lines")
    .evaluateAll((cells) =>
      cells
        .filter(
          (cell) => cell.scrollWidth > cell.clientWidth + 1 || cell.scrollHeight > cell.clientHeight + 1,
        )
        .map((cell) => cell.textContent),
    );
}

/** Returns the texts of all tables' cells and heads that are cut, or that reach out of their cell. */
export function textsOutOfCells(page: Page): Promise<string[]> {
  return page.locator("main :is(td, th)").evaluateAll((cells) => {
    return cells.filter((cell) => isCut(cell) || leaves(cell)).map((cell) => cell.textContent);

    function isCut(cell: Element): boolean {
      return [...cell.querySelectorAll("*")].some(
        (each) =>
          !isHidden(each) &&
          getComputedStyle(each).overflow !== "visible" &&
          (each.scrollWidth > each.clientWidth + 1 || each.scrollHeight > each.clientHeight + 1),
      );
    }

    function leaves(cell: Element): boolean {
      const { left, right, top, bottom } = cell.getBoundingClientRect();
      return [...cell.querySelectorAll("*"), cell]
        .filter((each) => !isHidden(each))
        .flatMap((each) => [...each.childNodes].filter(({ nodeType }) => nodeType === Node.TEXT_NODE))
        .flatMap(boxesOf)
        .some(
          (box) =>
            box.left < left - 1 || box.right > right + 1 || box.top < top - 1 || box.bottom > bottom + 1,
        );
    }

    function boxesOf(text: Node): DOMRect[] {
      const range = document.createRange();
      range.selectNodeContents(text);
      return [...range.getClientRects()];
    }

    /** What is for screen readers alone is a dot. */
    function isHidden(each: Element): boolean {
      return each instanceof HTMLElement && each.offsetWidth === 1 && each.offsetHeight === 1;
    }
  });
}
