/** How high the pieces of one part are, in any one unit. */
export interface PartHeights {
  /** The heading with what stands before the table, again on each page. */
  readonly heading: number;
  /** The table's head, again on each page. */
  readonly head: number;
  readonly lines: readonly number[];
  /** What stands after the table, in one piece. */
  readonly after: number;
}

/** Some lines of a part on one page. */
export interface Piece {
  /** Which part, from 0. */
  readonly part: number;
  /** Lines from `from` up to, not including, `to`. */
  readonly from: number;
  readonly to: number;
  /** Whether what stands after the table comes here. */
  readonly after: boolean;
}

/** Room on pages: the first one, every other one, and the gap between two parts. */
export interface Room {
  readonly first: number;
  readonly other: number;
  readonly gap: number;
}

/**
 * Divides parts into pages: a heading never stands without a line under it, a line is never cut, and what stands after a
 * table may begin the next page. What is higher than a whole page gets one of its own.
 */
export function pack(parts: readonly PartHeights[], { first, other, gap }: Room): Piece[][] {
  const pages: Piece[][] = [];
  let page: Piece[] = [];
  let left = first;

  function turn(): void {
    pages.push(page);
    page = [];
    left = other;
  }
  function put(piece: Piece, height: number): void {
    left -= height + (page.length === 0 ? 0 : gap);
    page.push(piece);
  }
  for (const [index, part] of parts.entries()) {
    let from = 0;
    for (;;) {
      const top = part.heading + (part.lines.length === 0 ? 0 : part.head);
      const room = left - top - (page.length === 0 ? 0 : gap);
      const fits = fitting(part.lines, from, room);
      const nothing = part.lines.length === 0 ? room < 0 : fits === from;
      if (nothing && page.length > 0) {
        turn();
        continue;
      }
      const to = part.lines.length === 0 ? 0 : Math.max(fits, from + 1);
      const last = to === part.lines.length;
      const height = top + sum(part.lines.slice(from, to));
      const after = last && height + part.after <= left - (page.length === 0 ? 0 : gap);
      put({ part: index, from, to, after }, height + (after ? part.after : 0));
      from = to;
      if (!last) turn();
      else if (!after && part.after > 0) {
        turn();
        put({ part: index, from, to, after: true }, part.heading + part.after);
      }
      if (last) break;
    }
  }
  if (page.length > 0) pages.push(page);
  return pages;
}

/** Up to which line there is room. */
function fitting(lines: readonly number[], from: number, room: number): number {
  let left = room;
  let to = from;
  for (const height of lines.slice(from)) {
    left -= height;
    if (left < 0) break;
    to += 1;
  }
  return to;
}

function sum(heights: readonly number[]): number {
  return heights.reduce((total, height) => total + height, 0);
}
