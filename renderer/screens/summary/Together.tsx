import { useTranslation } from "react-i18next";
import { useTestWords } from "../../app/testWords.ts";
import { useLengthUnit } from "../../words/lengths.ts";
import css from "./Summary.module.css";
import type { Summary } from "./summary.ts";
import { useWriteChange } from "./useWords.ts";

/** Tells the organiser in which tests everybody moved together: that is the hall, or practice, and nobody's own gain. */
export function Together({ together }: { readonly together: Summary["together"] }) {
  const { t } = useTranslation("summary");
  const testWord = useTestWords();
  const { lengths } = useLengthUnit();
  const writeChange = useWriteChange(lengths);
  return together.map(({ test, by, low, high, athletes }) => (
    <p key={test} className={css.going} data-together={test}>
      {t("together", {
        test: testWord(test, "name"),
        by: writeChange(test, by),
        low: writeChange(test, low),
        high: writeChange(test, high),
        athletes,
      })}
    </p>
  ));
}
