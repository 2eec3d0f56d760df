import { useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { measuresLengths } from "../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../../electron/domain/tests/reading.ts";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { NumberField } from "../../parts/controls/NumberField.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { LengthsChoice } from "../../tests/LengthsChoice.tsx";
import { useWriteSeen } from "../../tests/seen.ts";
import { useWriteTime } from "../../words/dates.ts";
import { useSay } from "../../words/say.ts";
import css from "./CorrectDialog.module.css";
import type { Corrections } from "./drafts.ts";
import { Doubt } from "./entry/Doubt.tsx";
import { SendTrouble } from "./entry/SendTrouble.tsx";
import { isAsking } from "./entry/useSend.ts";
import { ValueFields, type ValueFieldsHandle } from "./entry/ValueFields.tsx";
import type { AttemptView } from "./types.ts";
import { type Correction, useCorrection } from "./useCorrection.ts";
import { VoidOnly } from "./VoidOnly.tsx";

interface CorrectDialogProps {
  readonly attempt: AttemptView;
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
  readonly corrections: Corrections;
}

/** Corrects an attempt: the same fields with the entered values, and the reason of the change. */
export function CorrectDialog({ attempt, parameters, lengths, corrections }: CorrectDialogProps) {
  const { t } = useTranslation("station");
  const correction = useCorrection(attempt, parameters, lengths, corrections);
  const [isLeaving, setLeaving] = useState(false);
  const fields = useRef<ValueFieldsHandle>(null);
  const reason = useRef<HTMLInputElement>(null);
  const { sending } = correction;
  const { bib, name } = attempt.who;

  useEffect(() => fields.current?.focusFirst(), []);

  async function save(sure: boolean, written: Typed = {}): Promise<void> {
    const outcome = await correction.save(sure, written);
    if (outcome === "saved") {
      corrections.close();
      tell({ tone: "done", sentence: { key: "station:correct.kept", values: { bib: bib ?? "", name } } });
    } else if (outcome === "reason") toReason();
    else if (outcome !== "open") fields.current?.focusField(outcome.field);
  }
  /** Leads to the missing reason and the sentence under it, wherever the box was scrolled to. */
  function toReason(): void {
    reason.current?.focus({ preventScroll: true });
    requestAnimationFrame(() => reason.current?.scrollIntoView({ block: "center" }));
  }
  /** What was changed is dropped by an answer alone, never by a key that was meant for something else. */
  function leave(): void {
    if (correction.isChanged) setLeaving(true);
    else corrections.close();
  }
  function stay(): void {
    setLeaving(false);
    fields.current?.focusFirst();
  }

  return (
    <Dialog
      onClose={leave}
      title={t("correct.title", { bib, name })}
      actions={
        // While something is asked, its own answers are all there is.
        isLeaving || isAsking(sending) ? undefined : (
          <>
            <Button hint="Esc" onPress={leave}>
              {t("correct.cancel")}
            </Button>
            <VoidOnly
              attempt={attempt}
              reason={correction.draft.reason}
              onMissing={() => {
                correction.missReason();
                toReason();
              }}
              onDone={corrections.close}
            />
            <Button
              kind="primary"
              hint="Enter"
              busy={sending.state === "busy"}
              onPress={() => void save(false)}
            >
              {t("correct.save")}
            </Button>
          </>
        )
      }
    >
      {isLeaving ? (
        <Doubt
          no={t("correct.stay")}
          onNo={stay}
          answers={[{ key: "D", text: t("correct.drop"), choose: corrections.close }]}
        >
          <p className="strong">{t("correct.notSaved")}</p>
        </Doubt>
      ) : (
        <SendTrouble
          sending={sending}
          onSend={(sure) => void save(sure)}
          onWrite={(field, text) => void save(false, { [field]: text })}
          onNo={() => {
            correction.decline();
            fields.current?.focusDoubted();
          }}
        />
      )}
      <Was attempt={attempt} lengths={lengths} />
      {measuresLengths(attempt.test) && (
        <LengthsChoice
          lengths={correction.draft.lengths}
          setLengths={(unit) => correction.change({ lengths: unit })}
        />
      )}
      <ValueFields
        ref={fields}
        test={attempt.test}
        values={correction.draft.values}
        setValue={correction.setValue}
        errors={correction.errors}
        lengths={correction.draft.lengths}
        room={1}
        onEnter={() => void save(false)}
      />
      <Why correction={correction} reasonInput={reason} onEnter={() => void save(false)} />
      <p className="small quiet">{t("correct.how")}</p>
    </Dialog>
  );
}

function Was({ attempt, lengths }: Pick<CorrectDialogProps, "attempt" | "lengths">) {
  const { t } = useTranslation("station");
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const { by, at, test, seen } = attempt;
  return <p>{t("correct.was", { by, time: writeTime(at), seen: writeSeen(test, seen, lengths) })}</p>;
}

interface WhyProps {
  readonly correction: Correction;
  readonly reasonInput: React.RefObject<HTMLInputElement | null>;
  readonly onEnter: () => void;
}

/** Why it is corrected, and the bib of somebody else whose result it is. */
function Why({ correction, reasonInput, onEnter }: WhyProps) {
  const { t } = useTranslation("station");
  const say = useSay();
  const { draft, change, bibError, reasonMissing } = correction;
  return (
    <div className={css.why}>
      <TextField
        label={t("correct.reason")}
        value={draft.reason}
        onChange={(reason) => change({ reason })}
        error={reasonMissing ? t("correct.reasonEmpty") : null}
        maxLength={200}
        inputRef={reasonInput}
        onEnter={onEnter}
      />
      <NumberField
        label={t("correct.bib")}
        value={draft.bib}
        onChange={(bib) => change({ bib })}
        error={bibError === null ? null : say(bibError)}
        maxLength={6}
        onEnter={onEnter}
      />
    </div>
  );
}
