import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { useTRPC, useTRPCClient } from "../../app/client.tsx";
import { saveMade, textFile } from "../../app/saving.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import type { StudyView } from "./types.ts";

/** Saves a study's two files; offers to discard a study that never had a reading. */
export function SaveOrDrop({ study: { study, rows } }: { readonly study: StudyView }) {
  return (
    <>
      {rows.length > 0 && <Files studyId={study.id} />}
      {study.mayDrop && <Drop studyId={study.id} />}
    </>
  );
}

function Files({ studyId }: { readonly studyId: string }) {
  const { t } = useTranslation("study");
  const client = useTRPCClient();
  const save = (which: "readings" | "results") =>
    void saveMade("study", () => client.study.sheet.query({ studyId, which }).then(textFile));
  return (
    <Section title={t("files.title")}>
      <p className="measure">{t("files.names")}</p>
      <Row gap={3} wrap>
        <Button onPress={() => save("readings")}>{t("files.readings")}</Button>
        <Button onPress={() => save("results")}>{t("files.results")}</Button>
      </Row>
    </Section>
  );
}

function Drop({ studyId }: { readonly studyId: string }) {
  const { t } = useTranslation("study");
  const trpc = useTRPC();
  const [, go] = useLocation();
  const dropping = useMutation(trpc.study.drop.mutationOptions({ onSuccess: () => go("/study") }));
  return (
    <div>
      <Button kind="danger" busy={dropping.isPending} onPress={() => dropping.mutate({ studyId })}>
        {t("drop.do")}
      </Button>
    </div>
  );
}
