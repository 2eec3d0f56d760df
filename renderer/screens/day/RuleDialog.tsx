import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { protocolOf } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/Button.tsx";
import { Dialog } from "../../parts/Dialog.tsx";
import { NumberField } from "../../parts/NumberField.tsx";
import { useSay } from "../../words/say.ts";
import css from "./Rules.module.css";
import { type RuleName, rulesOf, withRules } from "./rules.ts";

interface RuleDialogProps {
  readonly test: TestCode;
  readonly parameters: unknown;
  readonly onClose: () => void;
}

type Typed = readonly (readonly [RuleName, string])[];

function typedOf(test: TestCode, parameters: unknown): Typed {
  return rulesOf(test, parameters).map(([name, value]) => [name, String(value)]);
}

function isNumber(typed: string): boolean {
  return /^\d+(\.\d+)?$/.test(typed.trim());
}

/** The numbers of one test's rules; a refusal leaves everything as it was typed. */
export function RuleDialog({ test, parameters, onClose }: RuleDialogProps) {
  const { t } = useTranslation(["day", "common"]);
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
    const rules = typed.map(([name, text]) => [name, Number(text)] as const);
    keep.mutate({ test, parameters: withRules(test, parameters, rules) });
  }
  return (
    <Dialog
      open
      onClose={onClose}
      kind="question"
      title={t(`common:test.${test}.name`)}
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
          label={t(`rules.field.${name}`)}
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
