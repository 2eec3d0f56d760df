import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { useTestWords } from "../../app/testWords.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { useSay } from "../../words/say.ts";
import type { StationPerson } from "./types.ts";

interface SkipDialogProps {
  readonly who: StationPerson;
  readonly test: TestCode;
  readonly onClose: (skipped: boolean) => void;
}

/** Skips a test for an athlete, with the reason that the protocol asks for. */
export function SkipDialog({ who, test, onClose }: SkipDialogProps) {
  const { t } = useTranslation("station");
  const testWord = useTestWords();
  const say = useSay();
  const trpc = useTRPC();
  const { ask } = useInitials();
  const skip = useMutation(trpc.station.skip.mutationOptions({ meta: { shownByScreen: true } }));
  const [reason, setReason] = useState("");
  const [refused, setRefused] = useState<Sentence | null>(null);

  async function submit(): Promise<void> {
    const by = await ask();
    if (by === null || skip.isPending) return;
    try {
      await skip.mutateAsync({ athleteId: who.athleteId, test, reason, by });
      onClose(true);
    } catch (error) {
      setRefused(sentenceOf(error));
    }
  }

  return (
    <Dialog
      open
      onClose={() => onClose(false)}
      title={t("skip.title", { name: who.name })}
      actions={
        <>
          <Button hint="Esc" onPress={() => onClose(false)}>
            {t("skip.cancel")}
          </Button>
          <Button kind="primary" hint="Enter" busy={skip.isPending} onPress={() => void submit()}>
            {t("skip.do")}
          </Button>
        </>
      }
    >
      <p>{testWord(test, "skip")}</p>
      <TextField
        label={t("skip.reason")}
        help={t("skip.reasonHelp")}
        value={reason}
        onChange={(typed) => {
          setReason(typed);
          setRefused(null);
        }}
        error={refused === null ? null : say(refused)}
        maxLength={200}
        autoFocus
        onEnter={() => void submit()}
      />
    </Dialog>
  );
}
