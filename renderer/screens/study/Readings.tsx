import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { useMarkText } from "../../words/marks.ts";
import { CorrectReading } from "./CorrectReading.tsx";
import type { StudyRow, StudyView } from "./types.ts";
import { useSeriesName } from "./words.ts";

/** Lists who has been read by whom; every brought reading can be corrected. */
export function Readings({ study }: { readonly study: StudyView }) {
  const { t } = useTranslation("study");
  const [correcting, setCorrecting] = useState<StudyRow | null>(null);
  const nameOf = useSeriesName();
  const markText = useMarkText();
  const readings = study.series.map(
    (series, at): Column<StudyRow> =>
      numberColumn(`reading-${series.position}`, nameOf(series), "11rem", ({ values }) => {
        const value = values[at];
        return value == null ? "–" : markText(value);
      }),
  );
  const correct = column<StudyRow>("correct", "", "8rem", (row) =>
    mayCorrect(study, row) ? (
      <Button label={t("rows.correctWhich", { name: row.name })} onPress={() => setCorrecting(row)}>
        {t("rows.correct")}
      </Button>
    ) : null,
  );
  return (
    <>
      <DataTable<StudyRow>
        caption={t("rows.title")}
        rows={study.rows}
        rowKey={({ athleteId }) => athleteId}
        columns={[
          column("name", t("rows.name"), "auto", ({ name }) => name),
          column("bib", t("rows.bib"), "5rem", ({ bib }) => bib ?? "–"),
          column("league", t("rows.league"), "12rem", ({ league }) => league),
          ...readings,
          correct,
        ]}
        rowHeight={56}
      />
      {correcting !== null && (
        <CorrectReading study={study} row={correcting} onClose={() => setCorrecting(null)} />
      )}
    </>
  );
}

function mayCorrect({ series }: StudyView, { values }: StudyRow): boolean {
  return series.some(({ day }, at) => day === null && values[at] != null);
}
