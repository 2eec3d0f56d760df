import { useMutation } from "@tanstack/react-query";
import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { measuresLengths } from "../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { NumberField } from "../../parts/controls/NumberField.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { LengthsChoice } from "../../tests/LengthsChoice.tsx";
import { useWriteSeen } from "../../tests/seen.ts";
import { useWriteTime } from "../../words/dates.ts";
import { useSay } from "../../words/say.ts";
import css from "./CorrectDialog.module.css";
import { SendTrouble } from "./entry/SendTrouble.tsx";
import { ValueFields, type ValueFieldsHandle } from "./entry/ValueFields.tsx";
import type { AttemptView } from "./types.ts";
import { useCorrection } from "./useCorrection.ts";

interface CorrectDialogProps {
  readonly attempt: AttemptView;
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
  readonly onClose: () => void;
}

/** Corrects an attempt: the same fields with the entered values, and the reason of the change. */
export function CorrectDialog({ attempt, parameters, lengths, onClose }: CorrectDialogProps) {
  const { t } = useTranslation("station");
  const say = useSay();
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const correction = useCorrection(attempt, parameters, lengths);
  const fields = useRef<ValueFieldsHandle>(null);
  const reason = useRef<HTMLInputElement>(null);
  const { bib, name } = attempt.who;
  const was = {
    by: attempt.by,
    time: writeTime(attempt.at),
    seen: writeSeen(attempt.test, attempt.seen, lengths),
  };

  useEffect(() => fields.current?.focusFirst(), []);

  async function save(sure: boolean): Promise<void> {
    const outcome = await correction.save(sure);
    if (outcome === "saved") onClose();
    else if (outcome === "reason") reason.current?.focus();
    else if (outcome !== "open") fields.current?.focusField(outcome.field);
  }

  return (
    <Dialog
      open
      onClose={onClose}
      title={t("correct.title", { bib, name })}
      actions={
        <>
          <Button hint="Esc" onPress={onClose}>
            {t("correct.cancel")}
          </Button>
          <VoidOnly
            attempt={attempt}
            reason={correction.reason}
            onMissing={correction.missReason}
            onDone={onClose}
          />
          <Button
            kind="primary"
            hint="Enter"
            busy={correction.sending.state === "busy"}
            onPress={() => void save(false)}
          >
            {t("correct.save")}
          </Button>
        </>
      }
    >
      <p>{t("correct.was", was)}</p>
      <p className="small quiet">{t("correct.how")}</p>
      {measuresLengths(attempt.test) && (
        <LengthsChoice lengths={correction.lengths} setLengths={correction.setLengths} />
      )}
      <ValueFields
        ref={fields}
        test={attempt.test}
        values={correction.values}
        setValue={correction.setValue}
        errors={correction.errors}
        lengths={correction.lengths}
        room={1}
        onEnd={() => reason.current?.focus()}
      />
      <div className={css.why}>
        <TextField
          label={t("correct.reason")}
          value={correction.reason}
          onChange={correction.setReason}
          error={correction.reasonMissing ? t("correct.reasonEmpty") : null}
          maxLength={200}
          inputRef={reason}
          onEnter={() => void save(false)}
        />
        <NumberField
          label={t("correct.bib")}
          value={correction.bib}
          onChange={correction.setBib}
          error={correction.bibError === null ? null : say(correction.bibError)}
          maxLength={6}
          onEnter={() => reason.current?.focus()}
        />
      </div>
      <SendTrouble
        sending={correction.sending}
        onSend={(sure) => void save(sure)}
        onNo={() => {
          correction.unask();
          fields.current?.focusLast();
        }}
      />
    </Dialog>
  );
}

interface VoidOnlyProps {
  readonly attempt: AttemptView;
  readonly reason: string;
  readonly onMissing: () => void;
  readonly onDone: () => void;
}

/** Voids the attempt with nothing in its place. */
function VoidOnly({ attempt, reason, onMissing, onDone }: VoidOnlyProps) {
  const { t } = useTranslation("station");
  const trpc = useTRPC();
  const { ask } = useInitials();
  const end = useMutation(trpc.station.void.mutationOptions({ onSuccess: onDone }));
  async function submit(): Promise<void> {
    if (reason.trim() === "") return onMissing();
    const by = await ask();
    if (by !== null) end.mutate({ attemptId: attempt.attemptId, reason, by });
  }
  return (
    <Button kind="danger" busy={end.isPending} onPress={() => void submit()}>
      {t("correct.voidOnly")}
    </Button>
  );
}
