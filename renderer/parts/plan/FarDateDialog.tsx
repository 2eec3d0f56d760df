import { useTranslation } from "react-i18next";
import { writeDate } from "../../words/dates.ts";
import { ConfirmDialog } from "../controls/ConfirmDialog.tsx";
import { useDistance } from "./useDistance.ts";

interface FarDateDialogProps {
  /** ISO 8601, as is `today`. */
  readonly date: string;
  readonly today: string;
  readonly busy: boolean;
  readonly onYes: () => void;
  /** To change the date. */
  readonly onNo: () => void;
}

/** Asks whether a date that is not near today is meant. */
export function FarDateDialog({ date, today, busy, onYes, onNo }: FarDateDialogProps) {
  const { t, i18n } = useTranslation("planning");
  const distance = useDistance(date, today) ?? "";
  return (
    <ConfirmDialog
      title={t("far.title")}
      cancel={t("far.change")}
      confirm={t("far.yes")}
      kind="primary"
      busy={busy}
      onConfirm={onYes}
      onClose={onNo}
    >
      <p>{t("far.create", { date: writeDate(date, i18n.language), distance })}</p>
    </ConfirmDialog>
  );
}
