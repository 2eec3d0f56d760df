import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { protocolOf, type TestCode } from "../../../electron/domain/tests/registry.ts";
import { parseNumber } from "../../../electron/domain/units.ts";
import { useTRPC } from "../../app/client.tsx";
import { tellDone } from "../../app/messages.ts";
import { useTestWords } from "../../app/testWords.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { NumberField } from "../../parts/controls/NumberField.tsx";
import type { Setting } from "../../tests/face.ts";
import { faceOf, readParameters } from "../../tests/registry.ts";
import { showNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";

interface RuleDialogProps {
  readonly test: TestCode;
  readonly parameters: unknown;
  readonly onClose: () => void;
}

type Typed = readonly (readonly [name: string, text: string])[];

function typedOf(test: TestCode, parameters: unknown, language: string): Typed {
  const settings = faceOf(test).settings(readParameters(test, parameters));
  return settings.map(([name, value]) => [name, showNumber(String(value), language)]);
}

/** Parses the typed numbers; null if one of them is none. */
function settingsOf(typed: Typed): readonly Setting[] | null {
  const settings = typed.flatMap(([name, text]): Setting[] => {
    const number = parseNumber(text);
    return number === undefined ? [] : [[name, number]];
  });
  return settings.length === typed.length ? settings : null;
}

/** Changes the numbers of one test's rules; a refusal leaves all as typed. */
export function RuleDialog({ test, parameters, onClose }: RuleDialogProps) {
  const { t, i18n } = useTranslation(["day", "common"]);
  const testWord = useTestWords();
  const say = useSay();
  const trpc = useTRPC();
  const [typed, setTyped] = useState(() => typedOf(test, parameters, i18n.language));
  const [tried, setTried] = useState(false);
  const keep = useMutation(
    trpc.day.setProtocol.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess: tellDone({ key: "day:rules.kept" }, onClose),
    }),
  );

  function send(): void {
    setTried(true);
    const settings = settingsOf(typed);
    if (settings === null) return;
    const changed = faceOf(test).withSettings(readParameters(test, parameters), settings);
    keep.mutate({ test, parameters: changed });
  }
  return (
    <Dialog
      onClose={onClose}
      kind="question"
      title={testWord(test, "name")}
      actions={
        <>
          <Button onPress={() => setTyped(typedOf(test, protocolOf(test).defaults, i18n.language))}>
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
          error={tried && parseNumber(text) === undefined ? t("rules.notNumber") : null}
        />
      ))}
      {keep.isError && (
        <p className="alert" role="alert">
          {say(sentenceOf(keep.error))}
        </p>
      )}
    </Dialog>
  );
}
