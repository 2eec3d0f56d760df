import { useTranslation } from "react-i18next";
import { leastAthletes } from "../../../electron/domain/study/shape.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import css from "./Study.module.css";
import type { StudyView } from "./types.ts";
import { useSeriesName } from "./words.ts";

/** Says how far a study is, and which readings are still missing. */
export function Missing({ study: { study, series, whole, rows, result } }: { readonly study: StudyView }) {
  const { t } = useTranslation("study");
  const nameOf = useSeriesName();
  const facts = series.flatMap((each) => {
    const name = nameOf(each);
    // A day's results are there; which of them count shows once somebody has been read.
    if (each.read === 0) return each.day === null ? [t("missing.all", { name })] : [];
    return each.missing === 0 ? [] : [t("missing.some", { name, count: each.missing })];
  });
  if (whole < study.aim) facts.push(t("missing.aim", { count: study.aim - whole }));
  return (
    <div className={css.standing}>
      <BigNumber
        label={t("missing.whole")}
        number={whole}
        unit={t("missing.ofAim", { count: study.aim })}
        {...(rows.length > whole && { note: t("missing.notWhole", { count: rows.length - whole }) })}
      />
      <Stack as="ul" gap={1} top>
        {result === null && <li className="strong">{t("missing.few", { count: leastAthletes })}</li>}
        {facts.map((fact) => (
          <li key={fact}>{fact}</li>
        ))}
        {facts.length === 0 && <li>{t("missing.nothing")}</li>}
      </Stack>
    </div>
  );
}
