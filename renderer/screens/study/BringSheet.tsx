import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { FileZone } from "../../parts/controls/FileZone.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { Progress } from "../../parts/layout/Progress.tsx";
import { Choices } from "../../parts/sheets/Choices.tsx";
import { Mapping } from "../../parts/sheets/Mapping.tsx";
import { readable } from "../../parts/sheets/sheet.ts";
import { useSay } from "../../words/say.ts";
import css from "./Study.module.css";
import type { Looked, SeriesProps } from "./types.ts";
import { type StudySheet, useStudySheet } from "./useStudySheet.ts";

/** Imports a sheet with one judge's readings: choose it, say which column is which, look at what it adds, import it. */
export function BringSheet({ study, series, name }: SeriesProps) {
  const { t } = useTranslation("study");
  const say = useSay();
  const sheet = useStudySheet(study.study.id, series.position);
  const { standing } = sheet;
  switch (standing.step) {
    case "none":
      return (
        <FileZone
          title={t("sheet.drop", { name })}
          button={t("sheet.choose")}
          note={t("sheet.note")}
          accept={readable}
          onFile={sheet.bring}
          onRefused={sheet.refuse}
        />
      );
    case "bringing":
      return <Progress label={t("sheet.reading", { file: standing.file })} done={null} total={1} />;
    case "refused":
      return (
        <Panel tone="alert" title={standing.file}>
          <p role="alert">{say(standing.sentence)}</p>
          <Button onPress={sheet.putAway}>{t("sheet.another")}</Button>
        </Panel>
      );
    case "looked": {
      const { sheet: own, looked } = standing;
      const { mapping, said } = own;
      return (
        <Stack gap={4}>
          <Look {...{ study, series, name, looked }} sheet={own} onDone={sheet.putAway} />
          <Choices form={looked.form} said={said} onSay={(more) => sheet.say(own, more)} />
          <Mapping
            form={looked.form}
            mapping={mapping}
            onMap={(field, header) => sheet.map(own, field, header)}
          />
        </Stack>
      );
    }
  }
}

interface LookProps extends SeriesProps {
  readonly sheet: StudySheet;
  readonly looked: Looked;
  readonly onDone: () => void;
}

/** Shows what a sheet would add, and which rows it would not; imports it. */
function Look({ study, series, name, sheet, looked, onDone }: LookProps) {
  const { t } = useTranslation("study");
  const trpc = useTRPC();
  const { ask } = useInitials();
  const taking = useMutation(
    trpc.study.takeSheet.mutationOptions({
      onSuccess({ counts }) {
        const values = { count: counts.new, judge: name };
        tell({ tone: "done", sentence: { key: "study:sheet.done", values } });
        onDone();
      },
    }),
  );
  async function take(): Promise<void> {
    const by = await ask();
    if (by === null) return;
    const { uploadId, mapping, said } = sheet;
    taking.mutate({ ...said, uploadId, mapping, studyId: study.study.id, position: series.position, by });
  }
  const { counts, form } = looked;
  const canRead = form.missing.length === 0;
  return (
    <Panel title={sheet.file}>
      {canRead && (
        <ul>
          <li className="strong">{t("sheet.new", { count: counts.new, judge: name })}</li>
          {counts.known > 0 && <li>{t("sheet.known", { count: counts.known })}</li>}
          {counts.keptBack > 0 && <li>{t("sheet.notImported", { count: counts.keptBack })}</li>}
        </ul>
      )}
      <Rows looked={looked} />
      <Row gap={3} wrap>
        {canRead && (
          <Button
            kind="primary"
            busy={taking.isPending}
            disabled={counts.new === 0}
            onPress={() => void take()}
          >
            {t("sheet.import", { count: counts.new })}
          </Button>
        )}
        <Button onPress={onDone}>{t("sheet.another")}</Button>
      </Row>
    </Panel>
  );
}

/** Lists rows that are not imported, with their line, and unusual ones that are. */
function Rows({ looked: { keptBack, unusual } }: { readonly looked: Looked }) {
  const { t } = useTranslation("study");
  const say = useSay();
  if (keptBack.length + unusual.length === 0) return null;
  return (
    <Stack as="ul" gap={1} className={`small ${css.lines}`}>
      {keptBack.map(({ line, reasons }) => (
        <li key={`out ${line}`}>{t("sheet.line", { line, why: reasons.map(say).join(" ") })}</li>
      ))}
      {unusual.map(({ line, name, why }) => (
        <li key={`odd ${line}`}>{t("sheet.unusual", { line, name, why: say(why) })}</li>
      ))}
    </Stack>
  );
}
