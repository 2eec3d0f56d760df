import { useTranslation } from "react-i18next";
import { protocolOf } from "../../../../electron/domain/tests/registry.ts";
import { writeMark } from "../../../../electron/domain/tests/written.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { writeMoment } from "../../../words/dates.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import { useMarkText } from "../../../words/marks.ts";
import css from "./HeldPage.module.css";
import type { Held } from "./types.ts";

type Reading = Held["study_readings"][number];

/** Lists readings for measuring studies, each with who entered it; nothing where there are none. */
export function HeldReadings({ readings }: { readonly readings: readonly Reading[] }) {
  const { t, i18n } = useTranslation("study");
  const testWord = useTestWords();
  const { lengths } = useLengthUnit();
  const markText = useMarkText();
  if (readings.length === 0) return null;
  function written({ test, value }: Reading): string {
    if (value === null) return t("held.gone");
    const grains = Math.round(value * protocolOf(test).grain.perUnit);
    return markText(writeMark(test, { state: "complete", value: grains }, lengths));
  }
  return (
    <section className={css.day}>
      <h2>{t("held.title")}</h2>
      <ul>
        {readings.map((reading) => (
          <li key={reading.id}>
            {writeMoment(reading.at, i18n.language)}, {testWord(reading.test, "name")}: {written(reading)},{" "}
            {t(reading.judge === "" ? "held.byVisit" : "held.byJudge", {
              judge: reading.judge,
              by: reading.entered_by,
            })}
            {reading.reason !== "" && `, ${reading.reason}`}
          </li>
        ))}
      </ul>
    </section>
  );
}
