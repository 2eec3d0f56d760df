import { useState } from "react";
import { useTranslation } from "react-i18next";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { BringSheet } from "./BringSheet.tsx";
import { ClearSeries } from "./ClearSeries.tsx";
import { EnterReading } from "./EnterReading.tsx";
import css from "./Study.module.css";
import type { Series, StudyView } from "./types.ts";
import { useSeriesName } from "./words.ts";

/** Where readings come in: from a sheet, or typed one by one. Nothing for a study of two days' results. */
export function BringReadings({ study }: { readonly study: StudyView }) {
  const { t } = useTranslation("study");
  const nameOf = useSeriesName();
  const brought = study.series.filter(({ day }) => day === null);
  const [chosen, setChosen] = useState<number | null>(null);
  const series = brought.find(({ position }) => position === chosen) ?? fewestOf(brought);
  if (series === undefined) return null;
  return (
    <Section title={t("bring.title")}>
      {brought.length > 1 && (
        <Choice
          label={t("bring.whose")}
          options={brought.map((each) => ({ value: String(each.position), label: nameOf(each) }))}
          value={String(series.position)}
          onChange={(position) => setChosen(Number(position))}
        />
      )}
      <div className={css.halves} key={series.position}>
        <BringSheet study={study} series={series} name={nameOf(series)} />
        <EnterReading study={study} series={series} name={nameOf(series)} />
      </div>
      {study.atDevices && (
        <Row gap={4} lines={2} align="center" wrap>
          <p className="measure">{t("bring.device")}</p>
          <LinkButton to="/devices">{t("bring.devices")}</LinkButton>
        </Row>
      )}
      {series.read > 0 && <ClearSeries study={study} series={series} name={nameOf(series)} />}
    </Section>
  );
}

/** Returns the series that has fewest readings: its are the ones that come next. */
function fewestOf(series: readonly Series[]): Series | undefined {
  return series.toSorted((a, b) => a.read - b.read)[0];
}
