import { expect, test } from "vitest";
import { seededChance } from "../../electron/domain/chance.ts";
import { differingHalls } from "../../electron/domain/reference-table/differing-halls.ts";
import { compared, type Reported } from "./compared.ts";

/**
 * Merges of invented halls of 12 to 60 athletes (the first of 60) in two age bands, push-ups of 25 with a standard deviation of 8. Halls
 * are honest and differ all the same, in who comes to them. Each tells its results in steps of its own, with at least five
 * in either end. Ours, no source: there are no published studies of how halls of this sport differ.
 */
interface Kind {
  readonly halls: number;
  /** Standard deviation of halls' means, in those of athletes. */
  readonly apart: number;
  /** By how much the first hall is truly off, in the same. */
  readonly off: number;
}

const random = seededChance([17, 2, 4, 8]);

/** A normal value (Box & Muller 1958). */
function normal(): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

function hallOf(number: number, { apart, off }: Kind): Reported[] {
  const size = number === 0 ? 60 : 12 + Math.floor(random() * 49);
  const mean = 25 + 8 * (apart * normal() + (number === 0 ? off : 0));
  const values = Array.from({ length: size }, () => Math.max(0, Math.round(mean + 8 * normal())));
  const rising = values.toSorted((a, b) => a - b);
  const step = [1, 2, 5, 10][Math.floor(random() * 4)] ?? 5;
  const below = Math.ceil(((rising[4] ?? 0) + 1) / step) * step;
  const from = Math.max(below, Math.floor((rising.at(-5) ?? 0) / step) * step);
  return values.map((value, index) => {
    const told = { hall: `hall ${number}`, cell: index % 3 === 0 ? "25 to 29" : "30 to 34" };
    if (value < below) return { ...told, low: null, high: below };
    if (value >= from) return { ...told, low: from, high: null };
    const low = Math.floor(value / step) * step;
    return { ...told, low, high: low + step };
  });
}

/** In how many of so many merges a hall is named that is honest, and one that is not. */
async function merges(count: number, kind: Kind) {
  let [honest, liar] = [0, 0];
  for (let merge = 0; merge < count; merge += 1) {
    const reports = Array.from({ length: kind.halls }, (_none, number) => hallOf(number, kind)).flat();
    const halls = await compared(reports);
    const named = differingHalls(halls).map(({ hall }) => halls.find((each) => each.hall === hall)?.name);
    const isOff = (name: string | undefined) => kind.off !== 0 && name === "hall 0";
    if (named.some((name) => !isOff(name))) honest += 1;
    if (named.some(isOff)) liar += 1;
  }
  return { honest: honest / count, liar: liar / count };
}

/** Three standard errors above 5 % in 300 merges. */
const most = 0.05 + 3 * Math.sqrt((0.05 * 0.95) / 300);

test.each([
  [24, 0],
  [24, 0.25],
  [24, 0.5],
  [8, 0.25],
])(
  "of %s honest halls that lie %s standard deviations apart one is named in at most one of twenty merges",
  async (halls, apart) => {
    const { honest } = await merges(300, { halls, apart, off: 0 });
    console.log(
      `${halls} halls, ${apart} apart: an honest one named in ${(100 * honest).toFixed(1)} % of 300 merges`,
    );
    expect(honest).toBeLessThanOrEqual(most);
  },
);

test.each([
  [0.1, 0.9],
  [0.25, 0.5],
])(
  "among halls %s apart, one whose results are two standard deviations higher is found, and no other for it",
  async (apart, least) => {
    const { honest, liar } = await merges(100, { halls: 24, apart, off: 2 });
    console.log(
      `${apart} apart, off by 2: found in ${(100 * liar).toFixed(0)} %, an honest one named in ${(100 * honest).toFixed(0)} %`,
    );
    expect(liar).toBeGreaterThanOrEqual(least);
    expect(honest).toBeLessThanOrEqual(0.12);
  },
);
