import { useTranslation } from "react-i18next";
import { protocolOf } from "../../../../electron/domain/tests/registry.ts";
import { writeMark } from "../../../../electron/domain/tests/written.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { useWriteDay, writeMoment } from "../../../words/dates.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import { useMarkText } from "../../../words/marks.ts";
import css from "./HeldPage.module.css";
import type { Held } from "./types.ts";

type Removed = Held["past_removed"][number];

/** Lists imported results that were removed or corrected, with who did it and why; nothing where there are none. */
export function HeldRemoved({ marks }: { readonly marks: readonly Removed[] }) {
  const { t, i18n } = useTranslation("planning");
  const testWord = useTestWords();
  const { lengths } = useLengthUnit();
  const writeDay = useWriteDay();
  const markText = useMarkText();
  if (marks.length === 0) return null;
  function written({ test }: Removed, value: number): string {
    const grains = Math.round(value * protocolOf(test).grain.perUnit);
    return markText(writeMark(test, { state: "complete", value: grains }, lengths));
  }
  return (
    <section className={css.day}>
      <h2>{t("past.gone")}</h2>
      <ul>
        {marks.map((mark) => (
          <li key={`${mark.at} ${mark.date} ${mark.protocol}`}>
            {writeDay(mark.date)}, {testWord(mark.test, "name")}: {written(mark, mark.value)},{" "}
            {t(mark.instead === null ? "past.removed" : "past.corrected", {
              by: mark.voided_by,
              at: writeMoment(mark.at, i18n.language),
              reason: mark.reason,
              instead: mark.instead === null ? "" : written(mark, mark.instead),
            })}
          </li>
        ))}
      </ul>
    </section>
  );
}
