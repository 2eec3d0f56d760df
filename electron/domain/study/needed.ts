import { upperShare } from "../statistics/interval.ts";
import { typicalErrorInterval } from "../statistics/reliability.ts";
import { quantileOfT } from "../statistics/student.ts";
import { levelFor } from "./bias.ts";
import { leastForWord, mostAthletes } from "./shape.ts";

/** How near the typical error shall be known, either way. Ours, no source. */
const wantedNearness = 0.2;
/** The chance to find a bias that is there. Common practice. */
const wantedPower = 0.8;

/** Returns how many athletes tell the typical error of so many series to within 20 % (95 % interval, χ²). */
export function athletesForError(series: number): number {
  return fewest((athletes) => {
    const { low, high } = typicalErrorInterval(1, (athletes - 1) * (series - 1));
    return low >= 1 - wantedNearness && high <= 1 + wantedNearness;
  });
}

/**
 * Returns how many athletes find a bias with a chance of 80 %: the least n with √n · bias / spread ≥ t + t′, the t of the
 * interval and that of the power. The usual approximation of the non-central t; at worst one athlete off.
 * @param spread the standard deviation of the differences, in the unit of the bias
 */
export function athletesForBias(spread: number, bias: number, series: number): number {
  const share = upperShare(levelFor(series));
  return fewest((athletes) => {
    const reach = quantileOfT(share, athletes - 1) + quantileOfT(wantedPower, athletes - 1);
    return reach * spread <= Math.sqrt(athletes) * bias;
  });
}

/** Returns the smallest number of athletes that is enough; more than a study can have where none is. */
function fewest(isEnough: (athletes: number) => boolean): number {
  let [below, above] = [leastForWord - 1, mostAthletes + 1];
  while (above - below > 1) {
    const middle = Math.floor((below + above) / 2);
    if (isEnough(middle)) above = middle;
    else below = middle;
  }
  return above;
}
