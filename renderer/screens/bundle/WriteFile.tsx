import { useMutation } from "@tanstack/react-query";
import { type RefObject, useState } from "react";
import { useTranslation } from "react-i18next";
import { bridge } from "../../app/bridge.ts";
import { useTRPC } from "../../app/client.tsx";
import { bytesOf, tellOutcome } from "../../app/saving.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Form } from "../../parts/flow/Form.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { writeMoment } from "../../words/dates.ts";
import { writeNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { type Preview, shortHash } from "./preview.ts";
import css from "./WriteFile.module.css";

interface WriteFileProps {
  readonly bundle: Preview;
  /** True while another choice is being computed. */
  readonly isOld: boolean;
  /** The field of the confirming word, to focus it from elsewhere. */
  readonly wordRef: RefObject<HTMLInputElement | null>;
}

/** Confirms with a typed word, then saves the file that was looked at where the organiser chooses. */
export function WriteFile({ bundle, isOld, wordRef }: WriteFileProps) {
  const { t, i18n } = useTranslation("bundle");
  const say = useSay();
  const [word, setWord] = useState("");
  const [tried, setTried] = useState(false);
  const [looked, setLooked] = useState(bundle.sha256);
  const write = useWrite(() => {
    setWord("");
    setTried(false);
  });
  const right = word.trim().toLowerCase() === t("write.word");
  const changed = looked !== bundle.sha256;
  const { earlier } = bundle;
  const isSecond = earlier !== null && !earlier.same;
  const size = t("count.bytes", { count: bundle.bytes, shown: writeNumber(bundle.bytes, i18n.language) });

  const asked = {
    ...{ dayId: bundle.day.id, kind: bundle.kind, k: bundle.k === 11 ? (11 as const) : (5 as const) },
    previewSha256: bundle.sha256,
  };

  function submit(): void {
    setTried(true);
    if (bridge === null) tellOutcome("bundle", undefined);
    else if (right && !changed && !isOld) write.mutate(asked);
  }
  function lookedAgain(): void {
    setLooked(bundle.sha256);
    wordRef.current?.focus();
  }
  const wrong = tried && !right ? t("write.wrong", { word: t("write.word") }) : null;
  if (isSecond) return <Second earlier={earlier} />;
  return (
    <Form gap={4} align="start" onSubmit={submit}>
      <p className="lead strong">{t("write.name", { name: bundle.name, size })}</p>
      <p className={css.words}>{t("write.once")}</p>
      <p className={css.words}>{t("write.one")}</p>
      {changed && <Changed bundle={bundle} onLooked={lookedAgain} />}
      <div className={css.confirm}>
        <TextField
          label={t("write.label", { word: t("write.word") })}
          value={word}
          onChange={setWord}
          error={wrong ?? (write.isError ? say(sentenceOf(write.error)) : null)}
          maxLength={20}
          inputRef={wordRef}
        />
        <Button kind="primary" size="large" type="submit" busy={write.isPending} disabled={changed || isOld}>
          {t("write.do")}
        </Button>
      </div>
    </Form>
  );
}

/** Refuses a second bundle of a day: compared with the first, it would give away the athletes who were added. */
function Second({ earlier }: { readonly earlier: NonNullable<Preview["earlier"]> }) {
  const { t, i18n } = useTranslation("bundle");
  return (
    <Stack gap={4} align="start">
      <p className={`strong ${css.before}`}>
        {t("write.second", { at: writeMoment(earlier.at, i18n.language), k: earlier.k })}
      </p>
      <p className={css.words}>{t("write.secondWhy")}</p>
    </Stack>
  );
}

/** Logs the file as shared and saves it; the message strip says the outcome. A refused folder loses nothing. */
function useWrite(onSaved: () => void) {
  const trpc = useTRPC();
  // After a failure for no known reason a part of the file may be on the disk: then it counts as shared.
  const unsaved = useMutation(trpc.bundle.notSaved.mutationOptions());
  return useMutation(
    trpc.bundle.write.mutationOptions({
      meta: { shownByScreen: true },
      async onSuccess(file) {
        const outcome = (await bridge?.saveFile({
          suggestedName: file.name,
          bytes: bytesOf(file.bytes),
        })) ?? { saved: false, why: "failed" };
        tellOutcome("bundle", outcome, { sha: shortHash(file.sha256) });
        if (outcome.saved) return onSaved();
        if (file.logged !== null && outcome.why !== "failed") unsaved.mutate({ logged: file.logged });
      },
    }),
  );
}

/** Says that the rows have changed since they were looked at; nothing can be written until they are looked at again. */
function Changed({ bundle, onLooked }: { readonly bundle: Preview; readonly onLooked: () => void }) {
  const { t } = useTranslation("bundle");
  const count = bundle.rows.reduce((sum, row) => sum + row.marks.length, 0);
  const marks = t("count.marks", { count });
  return (
    <Row gap={4} lines={3} align="center" wrap className={`strong ${css.changed}`} role="status">
      <p>{t("write.changed", { marks })}</p>
      <Button onPress={onLooked}>{t("write.looked")}</Button>
    </Row>
  );
}
