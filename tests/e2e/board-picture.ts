import type { Page } from "@playwright/test";

/**
 * What is wrong with the picture that the board shows: text smaller than 2.2 % of the screen's height, text that
 * reaches over the screen's edge, or a scene taller than its room.
 */
export function faultsOf(board: Page): Promise<string[]> {
  return board.evaluate(() => {
    const faults: string[] = [];
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
    }
    const scene = document.querySelector("main section");
    if (scene !== null && scene.scrollHeight > scene.clientHeight + 1) faults.push("the scene is too tall");
    return faults;
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
