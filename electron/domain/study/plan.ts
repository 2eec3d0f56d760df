import { type Sentence, sentence } from "../words.ts";
import { fewestSeries, mostDaysApart, mostSeries, type StudyKind } from "./shape.ts";

/**
 * Where a series comes from: the marks of a day as they stand, of judges those that one of them entered; or readings that
 * are brought for the study.
 */
export type SeriesSource =
  | { readonly from: "marks"; readonly dayId: number; readonly date: string; readonly judge: string }
  | { readonly from: "readings"; readonly judge: string; readonly date: string | null };

/** Returns what is wrong with the series of a planned study; null for a good plan. */
export function whyNotPlanned(kind: StudyKind, series: readonly SeriesSource[]): Sentence | null {
  if (series.length < fewestSeries || series.length > mostSeries) return sentence("study.plan.count");
  return kind === "judges" ? whyNotJudges(series) : whyNotVisits(series);
}

function whyNotJudges(series: readonly SeriesSource[]): Sentence | null {
  const ofMarks = series.flatMap((each) => (each.from === "marks" ? [each.judge] : []));
  if (ofMarks.length > 1) return sentence("study.plan.oneOfMarks");
  const judges = series.map(({ judge }) => judge);
  if (judges.includes("")) return sentence("study.plan.noJudge");
  const twice = judges.find((judge, at) => judges.indexOf(judge) !== at);
  if (twice === undefined) return null;
  const values = { judge: twice };
  return ofMarks.includes(twice)
    ? sentence("study.plan.judgeOfMarks", values)
    : sentence("study.plan.judgeTwice", values);
}

function whyNotVisits([first, second, ...more]: readonly SeriesSource[]): Sentence | null {
  if (more.length > 0) return sentence("study.plan.twoVisits");
  const [before, after] = [first?.date, second?.date];
  if (before == null || after == null) return sentence("study.plan.noDate");
  const days = Math.round((Date.parse(after) - Date.parse(before)) / 86_400_000);
  if (days < 1) return sentence("study.plan.order");
  return days > mostDaysApart ? sentence("study.plan.tooFar", { days, most: mostDaysApart }) : null;
}
