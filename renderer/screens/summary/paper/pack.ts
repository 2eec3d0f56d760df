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
export function pack(parts: readonly PartHeights[], room: Room): Piece[][] {
  const stack = newStack(room);
  for (const [index, part] of parts.entries()) place(stack, index, part);
  return stack.pages();
}

/** Pages as they fill, one after another. */
interface Stack {
  /** What is left of the page at hand for one more piece. */
  left(): number;
  isFresh(): boolean;
  put(piece: Piece, height: number): void;
  turn(): void;
  pages(): Piece[][];
}

function newStack({ first, other, gap }: Room): Stack {
  const full: Piece[][] = [];
  let page: Piece[] = [];
  let room = first;
  const before = () => (page.length === 0 ? 0 : gap);
  return {
    left: () => room - before(),
    isFresh: () => page.length === 0,
    put(piece, height) {
      room -= height + before();
      page.push(piece);
    },
    turn() {
      full.push(page);
      page = [];
      room = other;
    },
    pages: () => (page.length === 0 ? full : [...full, page]),
  };
}

function place(stack: Stack, index: number, part: PartHeights): void {
  const { heading, lines, after } = part;
  const top = heading + (lines.length === 0 ? 0 : part.head);
  let from = 0;
  for (;;) {
    const fits = fitting(lines, from, stack.left() - top);
    const nothing = lines.length === 0 ? stack.left() < top : fits === from;
    if (nothing && !stack.isFresh()) {
      stack.turn();
      continue;
    }
    const to = lines.length === 0 ? 0 : Math.max(fits, from + 1);
    const last = to === lines.length;
    const height = top + sum(lines.slice(from, to));
    const withAfter = last && (after === 0 || height + after <= stack.left());
    stack.put({ part: index, from, to, after: withAfter }, height + (withAfter ? after : 0));
    from = to;
    if (withAfter) return;
    if (last) break;
    stack.turn();
  }
  stack.turn();
  stack.put({ part: index, from, to: from, after: true }, heading + after);
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
