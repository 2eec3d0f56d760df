import type { PrintPaper } from "../../../electron/shell/bridge/bridge-types.ts";

/** The papers for cards. */
export const cardPapers = [
  "a5",
  "half-letter",
  "a4-two",
  "letter-two",
] as const satisfies readonly PrintPaper[];
export type CardPaper = (typeof cardPapers)[number];

/** Returns the size of one card on a paper. */
export function cardSize(paper: CardPaper): "a5" | "half-letter" {
  return paper === "a5" || paper === "a4-two" ? "a5" : "half-letter";
}

/** The items on one sheet of paper: one, or two side by side; null where the right half stays empty. */
export type OnSheet<Item> = readonly [Item] | readonly [Item, Item | null];

/**
 * Cards in the order of a list laid on sheets. Two up, the first half of the list is on the left and the second on the
 * right, so that a pile that is cut in the middle makes two piles that are in order.
 */
export function layOut<Item>(items: readonly Item[], paper: CardPaper): OnSheet<Item>[] {
  if (paper === "a5" || paper === "half-letter") return items.map((item) => [item] as const);
  const sheets = Math.ceil(items.length / 2);
  return items.slice(0, sheets).map((item, index) => [item, items[sheets + index] ?? null] as const);
}
