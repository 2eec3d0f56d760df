import type { ReactNode } from "react";
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
  return (
    <ConfirmDialog
      title={title}
      cancel={t("given.cancel")}
      confirm={t("given.save")}
      kind="primary"
      busy={saving.busy}
      onConfirm={onSave}
      onClose={onClose}
    >
      <Form gap={4} onSubmit={onSave}>
        {children}
        {saving.refusal !== null && (
          <p className="alert" role="alert">
            {say(saving.refusal)}
          </p>
        )}
        <button type="submit" hidden />
      </Form>
    </ConfirmDialog>
  );
}
