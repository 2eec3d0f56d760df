import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { dateHere, useWriteDay } from "../../words/dates.ts";
import { PlanForm } from "./PlanForm.tsx";
import css from "./Study.module.css";
import type { StudyLine } from "./types.ts";
import { useStudyName } from "./words.ts";

/** Lists the measuring studies, and plans a new one. */
export function StudiesScreen() {
  const { t } = useTranslation("study");
  const trpc = useTRPC();
  const list = useQuery(trpc.study.list.queryOptions());
  return (
    <Screen title={t("title")} lead={t("lead")} ready={list.isFetched}>
      <Answer query={list}>
        {({ studies, days, enough }) => (
          <>
            {studies.length > 0 && <Studies studies={studies} />}
            <Section title={t("plan.title")}>
              <p className="measure">{t("apart")}</p>
              <PlanForm days={days} enough={enough} />
            </Section>
          </>
        )}
      </Answer>
    </Screen>
  );
}

function Studies({ studies }: { readonly studies: readonly StudyLine[] }) {
  const { t } = useTranslation("study");
  const writeDay = useWriteDay();
  const nameOf = useStudyName();
  return (
    <Section title={t("list.title")}>
      <DataTable<StudyLine>
        caption={t("list.title")}
        rows={studies}
        rowKey={({ id }) => id}
        columns={[
          column("name", t("list.name"), "auto", (study) => (
            <Link href={`/study/${study.id}`} className={css.whole}>
              {nameOf(study)}
            </Link>
          )),
          column("judges", t("list.judges"), "10rem", ({ judges }) => judges.join(", ")),
          column("planned", t("list.planned"), "10rem", ({ at }) => writeDay(dateHere(new Date(at)))),
          numberColumn("whole", t("list.whole"), "12rem", ({ whole, aim }) =>
            t("list.ofAim", { count: whole, aim }),
          ),
        ]}
      />
    </Section>
  );
}
