import { useMutation } from "@tanstack/react-query";
import { type RefObject, useState } from "react";
import { useTranslation } from "react-i18next";
import { bridge } from "../../app/bridge.ts";
import { useTRPC } from "../../app/client.tsx";
import { bytesOf, tellOutcome } from "../../app/saving.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { writeMoment } from "../../words/dates.ts";
import { writeNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { type Preview, shortHash } from "./preview.ts";
import css from "./WriteFile.module.css";

interface WriteFileProps {
  readonly bundle: Preview;
  /** True while another choice is being worked out. */
  readonly isOld: boolean;
  /** The field for the word, to go to. */
  readonly wordRef: RefObject<HTMLInputElement | null>;
}

/** The last step: a typed word, then the file that was looked at, saved where the organiser says. */
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
    <Stack
      as="form"
      gap={4}
      align="start"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
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
    </Stack>
  );
}

/** A bundle of this day is out, and this is another one: it would give away who was added. */
function Second({ earlier }: { readonly earlier: NonNullable<Preview["earlier"]> }) {
  const { t, i18n } = useTranslation("bundle");
  return (
    <Stack gap={4} align="start">
      <p className={css.before}>
        {t("write.second", { at: writeMoment(earlier.at, i18n.language), k: earlier.k })}
      </p>
      <p className={css.words}>{t("write.secondWhy")}</p>
    </Stack>
  );
}

/** Hands the file out and saves it; what came of it stands in the message strip. A place refused loses nothing. */
function useWrite(onSaved: () => void) {
  const trpc = useTRPC();
  // Where writing failed for no known reason a part of the file may be on the disk, so that then it counts as having left.
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

/** The rows are not those that were looked at any more: nothing can be written until they were. */
function Changed({ bundle, onLooked }: { readonly bundle: Preview; readonly onLooked: () => void }) {
  const { t } = useTranslation("bundle");
  const count = bundle.rows.reduce((sum, row) => sum + row.marks.length, 0);
  const marks = t("count.marks", { count });
  return (
    <div className={css.changed} role="status">
      <p>{t("write.changed", { marks })}</p>
      <Button onPress={onLooked}>{t("write.looked")}</Button>
    </div>
  );
}
