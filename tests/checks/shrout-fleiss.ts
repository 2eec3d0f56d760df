/** Six targets, each judged by four. Source: Shrout & Fleiss 1979, Psychological Bulletin 86(2), 420–428. */
export const shroutAndFleiss: readonly (readonly number[])[] = [
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
];
