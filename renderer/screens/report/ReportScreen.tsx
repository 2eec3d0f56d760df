import { useQuery } from "@tanstack/react-query";
import { strToU8, zipSync } from "fflate";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { ReportFile } from "../../../electron/shell/bridge/bridge-types.ts";
import { bridge } from "../../app/bridge.ts";
import { saveMade } from "../../app/saving.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { FilesToRead } from "../../parts/layout/FilesToRead.tsx";
import { Panel, Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { dateHere } from "../../words/dates.ts";
import { writeNumber } from "../../words/numbers.ts";
import css from "./ReportScreen.module.css";

/** Shows the report for a helper, then saves it where the organiser chooses. Nothing is sent. */
export function ReportScreen() {
  const { t } = useTranslation("report");
  // Read once a visit, so that the saved files are the ones that were read, to the letter.
  const files = useQuery({
    queryKey: ["report"],
    queryFn: () => (bridge === null ? [] : bridge.report()),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
  });
  return (
    <Screen title={t("title")} lead={t("lead")} ready={files.isFetched}>
      <Answer query={files}>
        {(read) => (
          <>
            <SavePanel files={read} />
            <Section title={t("inside")}>
              <Inside files={read} />
            </Section>
          </>
        )}
      </Answer>
    </Screen>
  );
}

function SavePanel({ files }: { readonly files: readonly ReportFile[] }) {
  const { t } = useTranslation("report");
  const [busy, setBusy] = useState(false);
  const save = () => {
    setBusy(true);
    void saveMade("report", async () => zipOf(files)).finally(() => setBusy(false));
  };
  return (
    <Panel title={t("holds.title")}>
      <ul className={css.list}>
        <li>{t("holds.names")}</li>
        <li>{t("holds.marks")}</li>
        <li>{t("holds.machine")}</li>
      </ul>
      <p>{t("sent")}</p>
      <div>
        <Button kind="primary" size="large" busy={busy} onPress={save}>
          {t("save")}
        </Button>
      </div>
    </Panel>
  );
}

function Inside({ files }: { readonly files: readonly ReportFile[] }) {
  const { t, i18n } = useTranslation("report");
  const what = (name: string) => {
    if (name === "about.json") return t("about");
    if (name === "store.json") return t("store");
    return name === "tapeline.log" ? t("log") : t("olderLog");
  };
  const told = files.map(({ name, text }) => {
    const count = new TextEncoder().encode(text).length;
    return {
      name,
      text,
      what: what(name),
      size: t("size", { count, shown: writeNumber(count, i18n.language) }),
    };
  });
  return <FilesToRead files={told} />;
}

/** Packs the files that were read into one zip, named by the hall's date. */
function zipOf(files: readonly ReportFile[]) {
  const bytes = zipSync(Object.fromEntries(files.map(({ name, text }) => [name, strToU8(text)])));
  return { suggestedName: `tapeline-report-${dateHere()}.zip`, bytes };
}
