import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import type { Paper } from "../../app/saving.ts";
import { PaperActions } from "../../parts/controls/PaperActions.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { dateHere, useWriteDay } from "../../words/dates.ts";
import { forFile } from "../../words/forFile.ts";
import { useLengthUnit } from "../../words/lengths.ts";
import { BringReadings } from "./BringReadings.tsx";
import { Missing } from "./Missing.tsx";
import { Readings } from "./Readings.tsx";
import { ResultParts } from "./ResultParts.tsx";
import { SaveOrDrop } from "./SaveOrDrop.tsx";
import type { StudyView } from "./types.ts";
import { useStudyName } from "./words.ts";

/** Shows one study: what it shows so far, what is missing, the readings, and where new ones come in. */
export function StudyScreen({ id }: { readonly id: string }) {
  const { t } = useTranslation("study");
  const trpc = useTRPC();
  const { lengths } = useLengthUnit();
  const study = useQuery(trpc.study.get.queryOptions({ studyId: id, lengths }));
  const nameOf = useStudyName();
  const told = study.data;
  return (
    <Screen
      title={told === undefined ? t("title") : nameOf(told.study)}
      ready={study.isFetched}
      {...(told !== undefined && {
        lead: <Planned study={told} />,
        actions: told.result !== null && <Paperwork study={told} />,
      })}
    >
      <Answer query={study}>{(view) => <Parts study={view} />}</Answer>
    </Screen>
  );
}

function Planned({ study: { study } }: { readonly study: StudyView }) {
  const { t } = useTranslation("study");
  const writeDay = useWriteDay();
  const planned = t("one.planned", { date: writeDay(dateHere(new Date(study.at))), by: study.by });
  if (study.day === null) return planned;
  return `${t("one.ofDay", { title: study.day.title, date: writeDay(study.day.date) })} ${planned}`;
}

function Parts({ study }: { readonly study: StudyView }) {
  const { t } = useTranslation("study");
  const { result } = study;
  return (
    <>
      <Missing study={study} />
      {result !== null && <ResultParts study={study} result={result} />}
      <BringReadings study={study} />
      {study.rows.length > 0 && (
        <Section title={t("rows.title")}>
          <Readings study={study} />
        </Section>
      )}
      <SaveOrDrop study={study} />
    </>
  );
}

/** Selects the paper, and saves or prints what the study shows. */
function Paperwork({ study }: { readonly study: StudyView }) {
  const nameOf = useStudyName();
  const [paper, setPaper] = useState<Paper>("a4");
  return (
    <PaperActions
      screen="study"
      path={`/print/study/${study.study.id}`}
      paper={paper}
      onPaper={setPaper}
      fileName={`${forFile(nameOf(study.study))}.pdf`}
    />
  );
}
