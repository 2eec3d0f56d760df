import { mean } from "../checks/plan/calibration.ts";
import { suggestedIn } from "../checks/plan/suggested.ts";

/** What was said and what was truly saved may differ by this share of what was said, on average. */
const mostOff = 1 / 3;

/**
 * Makes so many changes that halls were told to make, each in its hall, and returns as text what was said to be saved and what
 * was saved. A day is longer with a change when it ends later on average over the days that are held with it and without.
 */
export function suggestionLines(count = 50): string[] {
  const all = suggestedIn("suggestions", count);
  const said = mean(all.map((each) => each.said.middle)) / 60;
  const truly = mean(all.map((each) => each.truly)) / 60;
  const longer = all.filter((each) => each.truly < 0).length;
  const off = Math.abs(truly / said - 1);
  return [
    `${all.length} changes: said ${said.toFixed(1)} min earlier, truly ${truly.toFixed(1)} min (${kept(off <= mostOff)})`,
    `${longer} of them made days longer (${kept(longer === 0)})`,
  ];
}

function kept(isKept: boolean): string {
  return isKept ? "kept" : "NOT KEPT";
}
