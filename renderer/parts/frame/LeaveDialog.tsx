import { type ReactNode, useState } from "react";
import { useTranslation } from "react-i18next";
import { keptHere } from "../../app/device-keep.ts";
import { leaveTable } from "../../app/membership.ts";
import { ConfirmDialog } from "../controls/ConfirmDialog.tsx";

interface LeaveDialogProps {
  readonly title: string;
  /** What leaving means here. */
  readonly children: ReactNode;
  readonly onClose: () => void;
}

/** Asks before a device leaves the table: says what the table never had, which is lost by it, and when it does not answer. */
export function LeaveDialog({ title, children, onClose }: LeaveDialogProps) {
  const { t } = useTranslation("join");
  const [busy, setBusy] = useState(false);
  const [isAway, setAway] = useState(false);
  const waiting = keptHere.use().filter(({ saved }) => !saved).length;
  async function leave(): Promise<void> {
    setBusy(true);
    // Where it is left, this page goes.
    if (await leaveTable()) return;
    setBusy(false);
    setAway(true);
  }
  return (
    <ConfirmDialog
      title={title}
      cancel={t("change.stay")}
      confirm={t("change.leave")}
      busy={busy}
      onConfirm={() => void leave()}
      onClose={onClose}
    >
      {children}
      {waiting > 0 && <p className="strong">{t("change.waiting", { count: waiting })}</p>}
      {isAway && (
        <p className="alert" role="alert">
          {t("change.away")}
        </p>
      )}
    </ConfirmDialog>
  );
}
