import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { tellDone } from "../../app/messages.ts";
import { useSay } from "../../words/say.ts";
import { Button } from "../controls/Button.tsx";
import { ConfirmDialog } from "../controls/ConfirmDialog.tsx";
import { Row, Stack } from "../flow/Stack.tsx";
import { Section } from "../layout/Panel.tsx";
import { asSentence } from "../sheets/sheet.ts";
import type { Step } from "./step.ts";
import { useStepWords } from "./useStepWords.ts";

/** The history of who is who, or of imports: what was done, by whom, and the way back where nothing depends on it. */
export function StepList({ of }: { readonly of: "identity" | "imports" }) {
  const { t } = useTranslation("steps");
  const trpc = useTRPC();
  const [chosen, setChosen] = useState<Step | null>(null);
  const steps = useQuery(trpc.people.steps.queryOptions({ of })).data ?? [];
  if (steps.length === 0) return null;
  return (
    <Section title={t(`title.${of}`)}>
      <p>{t(`lead.${of}`)}</p>
      <Stack as="ul" gap={4}>
        {steps.map((step) => (
          <li key={step.id}>
            <OneStep step={step} onUndo={() => setChosen(step)} />
          </li>
        ))}
      </Stack>
      {chosen !== null && <UndoDialog step={chosen} onClose={() => setChosen(null)} />}
    </Section>
  );
}

function OneStep({ step, onUndo }: { readonly step: Step; readonly onUndo: () => void }) {
  const { t } = useTranslation("steps");
  const say = useSay();
  const { what, when, changes, undone } = useStepWords()(step);
  return (
    <Stack gap={1}>
      <Row gap={4} align="center" between wrap>
        <span>
          <strong>{undone === null ? what : <s>{what}</s>}</strong> · {when}
        </span>
        {step.undone === null && step.blocked === null && (
          <Button label={t("undoWhich", { what })} onPress={onUndo}>
            {t("undo")}
          </Button>
        )}
      </Row>
      {changes.map((change) => (
        <span key={change}>{change}</span>
      ))}
      {undone !== null && <span>{undone}</span>}
      {step.blocked !== null && <span className="small">{say(asSentence(step.blocked))}</span>}
    </Stack>
  );
}

/** Asks once before a step is undone as a whole. */
function UndoDialog({ step, onClose }: { readonly step: Step; readonly onClose: () => void }) {
  const { t } = useTranslation("steps");
  const trpc = useTRPC();
  const { ask } = useInitials();
  const { what } = useStepWords()(step);
  const undo = useMutation(
    trpc.people.undo.mutationOptions({
      onSuccess: tellDone({ key: "steps:done" }, onClose),
      onError: onClose,
    }),
  );
  async function submit(): Promise<void> {
    const by = await ask();
    if (by !== null && !undo.isPending) undo.mutate({ stepId: step.id, by });
  }
  return (
    <ConfirmDialog
      title={t("dialog")}
      cancel={t("cancel")}
      confirm={t("sure")}
      busy={undo.isPending}
      onConfirm={() => void submit()}
      onClose={onClose}
    >
      <p className="strong">{what}</p>
      <p>{t(`undoes.${step.kind}`)}</p>
    </ConfirmDialog>
  );
}
