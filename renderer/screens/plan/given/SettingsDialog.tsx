import { type ReactNode, useRef } from "react";
import { useTranslation } from "react-i18next";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import { Form } from "../../../parts/flow/Form.tsx";
import { useSay } from "../../../words/say.ts";
import type { Saving } from "./useSavePlan.ts";

interface SettingsDialogProps {
  readonly title: ReactNode;
  readonly saving: Saving;
  readonly onSave: () => void;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** Asks for one part of a plan; a refusal is said in it, and what was typed stays. */
export function SettingsDialog({ title, saving, onSave, onClose, children }: SettingsDialogProps) {
  const { t } = useTranslation("plan");
  const say = useSay();
  const submit = useRef<HTMLButtonElement>(null);
  function save(): void {
    onSave();
    requestAnimationFrame(() => toFirstWrong(submit.current?.form ?? null));
  }
  return (
    <ConfirmDialog
      title={title}
      cancel={t("given.cancel")}
      confirm={t("given.save")}
      kind="primary"
      busy={saving.busy}
      onConfirm={save}
      onClose={onClose}
    >
      <Form gap={4} onSubmit={save}>
        {children}
        {saving.refusal !== null && (
          <p className="alert" role="alert" ref={show}>
            {say(saving.refusal)}
          </p>
        )}
        <button type="submit" hidden ref={submit} />
      </Form>
    </ConfirmDialog>
  );
}

/** Leads to the first field that can't be read and the sentence under it, wherever the box was scrolled to. */
function toFirstWrong(form: HTMLFormElement | null): void {
  const wrong = form?.querySelector<HTMLElement>("[aria-invalid='true']");
  wrong?.focus({ preventScroll: true });
  wrong?.scrollIntoView({ block: "center" });
}

/** Scrolls to a refusal once it is there: with many leagues it stands below what the box shows. */
function show(refusal: HTMLElement | null): void {
  refusal?.scrollIntoView({ block: "center" });
}
