import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC, useTRPCClient } from "../../../app/client.tsx";
import { type Paper, saveMade, textFile } from "../../../app/saving.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { PaperActions } from "../../../parts/controls/PaperActions.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { DataTable } from "../../../parts/layout/DataTable.tsx";
import { Section } from "../../../parts/layout/Panel.tsx";
import { dateHere } from "../../../words/dates.ts";
import { forFile } from "../../../words/forFile.ts";
import { useClock } from "../clock.ts";
import type { Result } from "../types.ts";
import { useWaveColumns } from "./useWaveColumns.tsx";
import { isEarlyForNothing, wavesOf } from "./waves.ts";

/** Shows who is to be there when, to print for the leagues, and as a sheet with names for the organiser. */
export function Timetable() {
  const { t } = useTranslation("plan");
  const trpc = useTRPC();
  const { data: result } = useQuery(trpc.plan.result.queryOptions());
  if (result == null) return null;
  return (
    <Section title={t("waves.title")} aside={!result.stale && <Paperwork result={result} />}>
      <p className="quiet measure">
        {t("waves.lead")} {isEarlyForNothing(result.plan) && t("waves.later")}
      </p>
      <Waves result={result} />
      {!result.stale && <OwnSheet />}
    </Section>
  );
}

function Waves({ result: { begins, plan } }: { readonly result: Result }) {
  const { t } = useTranslation("plan");
  const columns = useWaveColumns(useClock(begins));
  return (
    <DataTable
      caption={t("waves.title")}
      rows={wavesOf(plan)}
      rowKey={({ key }) => key}
      columns={columns}
      maxHeight="none"
    />
  );
}

/** The page for the leagues: no names of athletes. */
function Paperwork({ result: { begins } }: { readonly result: Result }) {
  const { t } = useTranslation(["plan", "common"]);
  const [paper, setPaper] = useState<Paper>("a4");
  const name = t("paper.file", { date: dateHere(new Date(begins)), paper: t(`common:paper.${paper}`) });
  return (
    <Row gap={3} lines={2} wrap align="center">
      <PaperActions
        screen="plan"
        path="/print/plan"
        paper={paper}
        onPaper={setPaper}
        fileName={`${forFile(name)}.pdf`}
      />
    </Row>
  );
}

/** Saves the organiser's own copy, with a line for each athlete. */
function OwnSheet() {
  const { t } = useTranslation("plan");
  const client = useTRPCClient();
  const [busy, setBusy] = useState(false);
  async function save(): Promise<void> {
    setBusy(true);
    await saveMade("plan", () => client.plan.sheet.query().then(textFile)).finally(() => setBusy(false));
  }
  return (
    <Row gap={4} lines={2} align="center" wrap>
      <Button busy={busy} onPress={() => void save()}>
        {t("waves.sheet")}
      </Button>
      <span className="quiet">{t("waves.sheetNote")}</span>
    </Row>
  );
}
