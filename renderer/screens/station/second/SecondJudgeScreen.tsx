import { useQuery } from "@tanstack/react-query";
import { useEffect } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../../app/client.tsx";
import { sendReadingsAgain } from "../../../app/kept-entries.ts";
import { tableAsOf } from "../../../app/table.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { Answer } from "../../../parts/layout/Answer.tsx";
import { EmptyState } from "../../../parts/layout/EmptyState.tsx";
import { Screen } from "../../../parts/layout/Screen.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import { Judging } from "./Judging.tsx";

/** Shows whoever judges a station's attempts a second time who is there, and takes what they saw for the study. */
export function SecondJudgeScreen({ test }: { readonly test: TestCode }) {
  const { t } = useTranslation("secondJudge");
  const testWord = useTestWords();
  const trpc = useTRPC();
  const query = useQuery(trpc.study.toRead.queryOptions());
  const asOf = tableAsOf.use();
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each opening of the table's store
  useEffect(() => sendReadingsAgain(test), [test, asOf]);
  return (
    <Screen
      title={t("title", { test: testWord(test, "name") })}
      mark={<TestMark test={test} size="large" />}
      ready={query.isFetched}
    >
      <Answer query={query}>
        {(view) =>
          view.study === null ? (
            <EmptyState title={t("none.title")} steps={[t("none.step")]} />
          ) : (
            <Judging key={view.study.studyId} {...{ test, view }} study={view.study} />
          )
        }
      </Answer>
    </Screen>
  );
}
