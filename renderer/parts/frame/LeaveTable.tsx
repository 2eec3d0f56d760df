import { useState } from "react";
import { useTranslation } from "react-i18next";
import { LeaveDialog } from "./LeaveDialog.tsx";
import css from "./LeaveTable.module.css";

/** Lets a joined laptop go back to its own first screen; asks first. */
export function LeaveTable() {
  const { t } = useTranslation("atTable");
  const [asking, setAsking] = useState(false);
  return (
    <>
      <button type="button" className={css.leave} onClick={() => setAsking(true)}>
        {t("leave.do")}
      </button>
      {asking && (
        <LeaveDialog title={t("leave.title")} onClose={() => setAsking(false)}>
          <p>{t("leave.what")}</p>
        </LeaveDialog>
      )}
    </>
  );
}
