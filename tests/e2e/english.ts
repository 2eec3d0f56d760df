import type { Page } from "@playwright/test";
import { filesOf, textsOf } from "../unit/word-files.ts";

/** English texts that no Spanish text is the same as, each as what it may look like with its values in it. */
const english = (() => {
  const spanish = new Set(textsOf(filesOf("es")).values());
  const texts = [...new Set(textsOf(filesOf("en")).values())].filter((text) => !spanish.has(text));
  return texts.filter(hasWords).map((text) => ({ text, seen: patternOf(text) }));
})();

function hasWords(text: string): boolean {
  return /\p{L}{2}/u.test(text.replace(/\{\{\w+\}\}/g, ""));
}

function patternOf(text: string): RegExp {
  const literal = text.split(/\{\{\w+\}\}/).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`^${literal.join(".{1,80}")}$`);
}

/** What a page shows or says that is an English text of the word files, with the text that it is. */
export async function englishOn(page: Page): Promise<string[]> {
  const pieces = await page.evaluate(() => {
    const found: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) found.push(walker.currentNode.textContent ?? "");
    for (const element of document.querySelectorAll("*")) {
      for (const name of ["aria-label", "aria-valuetext", "title", "placeholder", "alt"]) {
        found.push(element.getAttribute(name) ?? "");
      }
    }
    return [...new Set(found.map((text) => text.trim()))];
  });
  return pieces.flatMap((piece) => {
    const match = english.find(({ seen }) => seen.test(piece));
    return match === undefined ? [] : [`${piece} (${match.text})`];
  });
}
