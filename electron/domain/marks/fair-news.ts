import { assumedLearning } from "../statistics/learning.ts";
import { type Dated, type MarkNews, newsOf, unjudged } from "../statistics/news.ts";
import type { Variation } from "../statistics/variation.ts";
import type { TestCode } from "../tests/registry.ts";
import { type Sentence, sentence } from "../words.ts";
import { areAlike, type MadeMark, madeOtherwise } from "./otherwise.ts";

type DatedMade = Dated & { readonly made: MadeMark };

/**
 * Returns a mark's news by the earlier marks, oldest first, of which those of equally many trials make the level. Where
 * the last one is not of equally many, nothing is said of a change: the best of three is higher than the best of one.
 */
export function fairNewsOf(
  test: TestCode,
  mark: DatedMade,
  earlier: readonly DatedMade[],
  variation: Variation,
): MarkNews {
  const last = earlier.at(-1);
  const alike = earlier.filter(({ made }) => areAlike(mark.made, made));
  const news = newsOf(test, mark, earlier, variation, alike);
  if (last === undefined || areAlike(mark.made, last.made)) return news;
  return { ...news, ...unjudged };
}

/**
 * Says what belongs beside a change: in what the mark was made otherwise than the last one, that a gain came after a poor one,
 * and that knowing the test was taken off, where the word would else be another.
 */
export function besideChange(
  test: TestCode,
  told: { readonly mark: DatedMade; readonly news: MarkNews },
  earlier: readonly DatedMade[],
  variation: Variation,
): Sentence[] {
  const last = earlier.at(-1);
  if (last === undefined) return [];
  const { mark, news } = told;
  const { verdict, learnt } = news;
  const beside = [
    ...madeOtherwise(mark.made, last.made),
    ...afterPoor(test, mark, verdict, earlier, variation),
  ];
  if (learnt === null || learnt === 0) return beside;
  const asIs = fairNewsOf(test, mark, earlier, { ...variation, learning: assumedLearning });
  return asIs.verdict === verdict ? beside : [...beside, sentence("marks.learnt")];
}

/** Says that a gain came after a mark that was a loss itself: after a poor one, a normal one looks like a gain. */
function afterPoor(
  test: TestCode,
  mark: DatedMade,
  verdict: MarkNews["verdict"],
  earlier: readonly DatedMade[],
  variation: Variation,
): Sentence[] {
  if (verdict !== "likely gain" && verdict !== "clear gain") return [];
  const alike = earlier.filter(({ made }) => areAlike(mark.made, made));
  const last = alike.at(-1);
  if (last === undefined) return [];
  const { verdict: then } = fairNewsOf(test, last, alike.slice(0, -1), variation);
  return then === "likely loss" || then === "clear loss" ? [sentence("marks.afterPoor")] : [];
}
