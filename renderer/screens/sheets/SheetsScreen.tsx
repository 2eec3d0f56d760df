import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../electron/domain/words.ts";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { FileZone } from "../../parts/controls/FileZone.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { Progress } from "../../parts/layout/Progress.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import {
  changesOf,
  kinds,
  readable,
  type SheetState,
  type Taken,
  tooBig,
  unreadable,
} from "../../parts/sheets/sheet.ts";
import { StepList } from "../../parts/steps/StepList.tsx";
import { writeNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { Examples } from "./Examples.tsx";
import { KeptBack } from "./KeptBack.tsx";
import { Look } from "./Look.tsx";
import css from "./Sheets.module.css";
import { isAboutTheDay, type SheetInHand, useSheet } from "./useSheet.ts";

/** Imports the leagues' sheets: choose one, look at what it would change, import it. */
export function SheetsScreen() {
  const { t } = useTranslation("sheets");
  const sheet = useSheet();
  const { standing } = sheet;
  return (
    <Screen title={t("title")} lead={standing.step === "none" ? t("lead") : undefined} ready>
      {standing.step === "none" ? <ChooseSheet sheet={sheet} /> : <SheetHead sheet={sheet} />}
      {(standing.step === "bringing" || standing.step === "reading") && <Reading standing={standing} />}
      {standing.step === "refused" && <Refused sentence={standing.sentence} sheet={sheet} />}
      {standing.step === "preview" && <Look preview={standing.preview} sheet={sheet} />}
      {standing.step === "taken" && <Done taken={standing.taken} sheet={sheet} />}
      {(standing.step === "none" || standing.step === "taken") && <StepList of="imports" />}
    </Screen>
  );
}

/** Takes a sheet that is chosen or dropped, and explains the three kinds. */
function ChooseSheet({ sheet }: { readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  return (
    <div className={css.choose}>
      <FileZone
        size="large"
        title={t("choose.drop")}
        button={t("choose.button")}
        note={t("choose.note")}
        accept={readable}
        onFile={(name, content) => sheet.bring({ name, content })}
        onRefused={(name, why) => sheet.refuse(name, why === "too-big" ? tooBig : unreadable)}
      />
      <Examples />
    </div>
  );
}

type InWork = Extract<SheetState, { step: "bringing" | "reading" }>;

/** Shows the progress of the reading. */
function Reading({ standing }: { readonly standing: InWork }) {
  const { t, i18n } = useTranslation("sheets");
  if (standing.step === "bringing") return <Progress label={t("reading.label")} done={null} total={1} />;
  const { done, total } = standing;
  const words = t("reading.lines", {
    done: writeNumber(done, i18n.language),
    total: writeNumber(total, i18n.language),
  });
  return <Progress label={t("reading.label")} done={done} total={total} words={words} />;
}

/** Says what was imported and what was not, and offers the next steps. */
function Done({ taken, sheet }: { readonly taken: Taken; readonly sheet: SheetInHand }) {
  const { t, i18n } = useTranslation("sheets");
  const { counts, kind } = taken;
  const count = changesOf(counts);
  return (
    <>
      <Panel>
        <h2 className={css.title}>{t("done.title", { count, shown: writeNumber(count, i18n.language) })}</h2>
        <p>{t(`done.${kind}`)}</p>
        <Row gap={3} wrap>
          <Button kind="primary" autoFocus onPress={sheet.putAway}>
            {t("done.next")}
          </Button>
          <LinkButton to={kind === "roster" ? "/check-in" : "/day"}>
            {kind === "roster" ? t("done.checkIn") : t("done.day")}
          </LinkButton>
        </Row>
      </Panel>
      {counts.keptBack > 0 && (
        <KeptBack rows={taken.keptBack} count={counts.keptBack} others="areIn" sheet={sheet} />
      )}
    </>
  );
}

/** Says why the whole sheet can't be imported, and offers the next steps. Nothing was changed. */
function Refused({ sentence, sheet }: { readonly sentence: Sentence; readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const say = useSay();
  const needsDay = isAboutTheDay(sentence);
  return (
    <Panel tone="alert">
      <Stack role="alert" gap={2}>
        <p className={`lead strong measure ${css.why}`}>{say(sentence)}</p>
        <p>{t("refused.nothing")}</p>
      </Stack>
      <Row gap={3} wrap>
        {needsDay && (
          <LinkButton to="/" kind="primary">
            {t("refused.start")}
          </LinkButton>
        )}
        <Button kind={needsDay ? "quiet" : "primary"} onPress={sheet.putAway}>
          {t("another")}
        </Button>
        {needsDay && sheet.uploadId !== null && (
          <Button onPress={sheet.readAgain}>{t("refused.again")}</Button>
        )}
      </Row>
    </Panel>
  );
}

/** Shows the current file, the kind it is read as, and the button to choose another. */
function SheetHead({ sheet }: { readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const heading = useRef<HTMLHeadingElement>(null);
  const { standing, name, kind } = sheet;
  const isPreview = standing.step === "preview";
  const mayBeAnother = isPreview || (standing.step === "refused" && isAboutTheDay(standing.sentence));

  // The pressed button is gone; the keyboard goes on from here, and the file is read out.
  useEffect(() => heading.current?.focus(), []);

  return (
    <Row gap={5} lines={3} align="center" wrap className={css.head}>
      <h2 ref={heading} tabIndex={-1} className={css.name}>
        {name}
      </h2>
      {mayBeAnother && (
        <Row gap={3} lines={2} align="center" wrap className="strong">
          <span aria-hidden="true">{t("readAs")}</span>
          <Choice
            label={t("readAs")}
            hideLabel
            options={kinds.map((each) => ({ value: each, label: t(`kind.${each}`) }))}
            value={kind ?? (isPreview ? standing.preview.kind : null)}
            onChange={sheet.readAs}
          />
        </Row>
      )}
      {isPreview && <Button onPress={sheet.putAway}>{t("another")}</Button>}
    </Row>
  );
}
