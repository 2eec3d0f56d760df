import { useState } from "react";
import { useTranslation } from "react-i18next";
import { ConfirmDialog } from "../controls/ConfirmDialog.tsx";
import css from "./LeaveTable.module.css";
import { useLeaveTable } from "./useLeaveTable.ts";

/** Lets a joined laptop go back to its own first screen; asks first. */
export function LeaveTable() {
  const { t } = useTranslation("atTable");
  const [asking, setAsking] = useState(false);
  const { leave, busy, waiting } = useLeaveTable();
  return (
    <>
      <button type="button" className={css.leave} onClick={() => setAsking(true)}>
        {t("leave.do")}
      </button>
      {asking && (
        <ConfirmDialog
          title={t("leave.title")}
          cancel={t("leave.keep")}
          confirm={t("leave.do")}
          busy={busy}
          onConfirm={leave}
          onClose={() => setAsking(false)}
        >
          <p>{t("leave.what")}</p>
          {waiting > 0 && <p className="strong">{t("leave.waiting", { count: waiting })}</p>}
        </ConfirmDialog>
      )}
    </>
  );
}
