import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { protocolOf } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { useTestWords } from "../../app/testWords.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { NumberField } from "../../parts/controls/NumberField.tsx";
import { faceOf, readParameters } from "../../tests/registry.ts";
import { useSay } from "../../words/say.ts";
import css from "./Rules.module.css";

interface RuleDialogProps {
  readonly test: TestCode;
  readonly parameters: unknown;
  readonly onClose: () => void;
}

type Typed = readonly (readonly [name: string, text: string])[];

function typedOf(test: TestCode, parameters: unknown): Typed {
  const settings = faceOf(test).settings(readParameters(test, parameters));
  return settings.map(([name, value]) => [name, String(value)]);
}

function isNumber(typed: string): boolean {
  return /^\d+(\.\d+)?$/.test(typed.trim());
}

/** The numbers of one test's rules; a refusal leaves everything as it was typed. */
export function RuleDialog({ test, parameters, onClose }: RuleDialogProps) {
  const { t } = useTranslation(["day", "common"]);
  const testWord = useTestWords();
  const say = useSay();
  const trpc = useTRPC();
  const [typed, setTyped] = useState(() => typedOf(test, parameters));
  const [tried, setTried] = useState(false);
  const keep = useMutation(
    trpc.day.setProtocol.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess() {
        tell({ tone: "done", sentence: { key: "day:rules.kept" } });
        onClose();
      },
    }),
  );

  function send(): void {
    setTried(true);
    if (!typed.every(([, text]) => isNumber(text))) return;
    const settings = typed.map(([name, text]) => [name, Number(text)] as const);
    const changed = faceOf(test).withSettings(readParameters(test, parameters), settings);
    keep.mutate({ test, parameters: changed });
  }
  return (
    <Dialog
      open
      onClose={onClose}
      kind="question"
      title={testWord(test, "name")}
      actions={
        <>
          <Button onPress={() => setTyped(typedOf(test, protocolOf(test).defaults))}>
            {t("rules.handbook")}
          </Button>
          <Button onPress={onClose}>{t("rules.cancel")}</Button>
          <Button kind="primary" busy={keep.isPending} onPress={send}>
            {t("rules.keep")}
          </Button>
        </>
      }
    >
      {typed.map(([name, text], index) => (
        <NumberField
          key={name}
          label={testWord(test, `setting.${name}`)}
          digits="fraction"
          value={text}
          onChange={(changed) =>
            setTyped(typed.map((each) => (each[0] === name ? ([name, changed] as const) : each)))
          }
          onEnter={send}
          autoFocus={index === 0}
          maxLength={8}
          error={tried && !isNumber(text) ? t("rules.notNumber") : null}
        />
      ))}
      {keep.isError && (
        <p className={css.error} role="alert">
          {say(sentenceOf(keep.error))}
        </p>
      )}
    </Dialog>
  );
}
