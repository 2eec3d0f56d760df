import type { Page } from "@playwright/test";

/**
 * What is wrong with the picture that the board shows: text smaller than 2.2 % of the screen's height, text that
 * reaches over the screen's edge or into another text or sign, or a scene taller than its room.
 */
export function faultsOf(board: Page): Promise<string[]> {
  return board.evaluate(() => {
    const faults: string[] = [];
    const lines: { readonly text: string; readonly box: DOMRect }[] = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
      const { currentNode: node } = texts;
      const element = node.parentElement;
      const text = node.textContent?.trim() ?? "";
      // The letter of a sign is drawn in the sign's own measure; the unseen is not shown.
      if (element === null || text === "" || element.closest(".unseen, svg") !== null) continue;
      if (Number.parseFloat(getComputedStyle(element).fontSize) < innerHeight * 0.022) {
        faults.push(`too small: ${text}`);
      }
      const range = document.createRange();
      range.selectNode(node);
      const boxes = [...range.getClientRects()];
      if (boxes.some(({ right, bottom }) => right > innerWidth + 1 || bottom > innerHeight + 1)) {
        faults.push(`over the edge: ${text}`);
      }
      lines.push(...boxes.filter((box) => shows(element, box)).map((box) => ({ text, box })));
    }
    const scene = document.querySelector("main section");
    if (scene !== null && scene.scrollHeight > scene.clientHeight + 1) faults.push("the scene is too tall");
    for (const sign of document.querySelectorAll("svg")) {
      lines.push({ text: "a sign", box: sign.getBoundingClientRect() });
    }
    for (const [index, { text, box }] of lines.entries()) {
      const hit = lines.slice(index + 1).find((other) => meet(box, other.box));
      if (hit !== undefined) faults.push(`${text} runs into ${hit.text}`);
    }
    return faults;

    /** Whether a line is in its place, and not past the end of a text that is cut short. */
    function shows(element: Element, { top, height }: DOMRect): boolean {
      if (getComputedStyle(element).overflow !== "hidden") return true;
      return top + height / 2 < element.getBoundingClientRect().bottom;
    }

    /** Whether two lines of text stand in each other; tight lines have boxes that reach a little over their letters. */
    function meet(one: DOMRect, other: DOMRect): boolean {
      const inHeight = ({ top, bottom, height }: DOMRect) =>
        [top + height * 0.22, bottom - height * 0.22] as const;
      const [oneTop, oneBottom] = inHeight(one);
      const [otherTop, otherBottom] = inHeight(other);
      const beside = one.right - 2 < other.left || other.right - 2 < one.left;
      return !beside && oneTop < otherBottom && otherTop < oneBottom;
    }
  });
}

/** The size of the board's window on a screen of that size. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Gives the board's page another size, as another screen would. */
export async function resize(board: Page, { width, height }: Size): Promise<void> {
  const session = await board.context().newCDPSession(board);
  const screen = { width, height, deviceScaleFactor: 1, mobile: false };
  await session.send("Emulation.setDeviceMetricsOverride", screen);
}
