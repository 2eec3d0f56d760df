import { type PartHeights, type Piece, pack } from "./pack.ts";

/** The height of an element with what stands under it, in px. */
function heightOf(element: Element | null): number {
  return element === null ? 0 : element.getBoundingClientRect().height;
}

function heightsOf(part: Element): PartHeights {
  const of = (name: string) => heightOf(part.querySelector(`[data-measure="${name}"]`));
  const lines = [...part.querySelectorAll('[data-measure="line"]')].map(heightOf);
  return { heading: of("heading"), head: of("head"), lines, after: of("after") };
}

/**
 * Divides a page that holds everything, whatever its height, into pages of its paper.
 * @param all the page: its content is `[data-measure="body"]`, each part of it one of the body's children
 */
export function dividePages(all: HTMLElement): Piece[][] {
  const body = all.querySelector<HTMLElement>('[data-measure="body"]');
  if (body === null) return [];
  const edges = heightOf(all) - heightOf(body);
  const sheet = Number.parseFloat(getComputedStyle(all).getPropertyValue("--sheet-height"));
  const totals = heightOf(all.querySelector('[data-measure="totals"]'));
  const gap = Number.parseFloat(getComputedStyle(body).rowGap) || 0;
  // A hair of room, so that no rounding of a line's height pushes the foot off the page.
  const room = sheet - edges - 2;
  return pack([...body.children].map(heightsOf), { first: room, other: room + totals, gap });
}
