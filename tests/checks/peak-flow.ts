/**
 * Peak flow (l/min) of 17 people, twice by each of two meters. Source: Bland & Altman 1986, Lancet 327(8476), 307–310;
 * rows from memory, and they give the published differences.
 */
export const wright: readonly number[] = [
  ...[494, 490, 395, 397, 516, 512, 434, 401, 476, 470, 557, 611, 413, 415, 442, 431, 650, 638],
  ...[433, 429, 417, 420, 656, 633, 267, 275, 478, 492, 178, 165, 423, 372, 427, 421],
];
export const mini: readonly number[] = [
  ...[512, 525, 430, 415, 520, 508, 428, 444, 500, 500, 600, 625, 364, 460, 380, 390, 658, 642],
  ...[445, 432, 432, 420, 626, 605, 260, 227, 477, 467, 259, 268, 350, 370, 451, 443],
];

/** Returns a row for each person, with both blows. */
export function twice(blows: readonly number[]): number[][] {
  return blows.flatMap((blow, at) => (at % 2 === 0 ? [[blow, blows[at + 1] ?? 0]] : []));
}
