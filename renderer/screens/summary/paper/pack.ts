/** Heights of one part's pieces, all in one unit. */
export interface PartHeights {
  /** The heading with the sentence under it, counted on each page. */
  readonly heading: number;
  /** The table's head, repeated on each page. */
  readonly head: number;
  readonly lines: readonly number[];
  /** The notes after the table, in one piece. */
  readonly after: number;
}

/** Lines of one part on one page. */
export interface Piece {
  /** Index of the part, from 0. */
  readonly part: number;
  /** First line, and the one after the last. */
  readonly from: number;
  readonly to: number;
  /** True if the notes after the table come here. */
  readonly after: boolean;
}

/** Room on the first page and on every other one, and the gap between two parts. */
export interface Room {
  readonly first: number;
  readonly other: number;
  readonly gap: number;
}

/**
 * Divides parts into pages: a heading is never without a line under it, a line is never cut, and notes may start the
 * next page. A piece higher than a page gets a page of its own.
 */
export function pack(parts: readonly PartHeights[], room: Room): Piece[][] {
  const stack = newStack(room);
  for (const [index, part] of parts.entries()) place(stack, index, part);
  return stack.pages();
}

/** The pages being filled. */
interface Stack {
  /** Returns the room left on the current page for one more piece. */
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

/** Returns the first line without room. */
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
