import { useState } from "react";
import { useTranslation } from "react-i18next";
import { ownName } from "../../app/table.ts";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { useNameOfPlace, type VolunteerPlace } from "../../parts/devices/places.ts";
import { useLeaveTable } from "../../parts/frame/useLeaveTable.ts";
import css from "./DeviceLine.module.css";

/**
 * The key beside what a device is used for, for whoever wants to do something else with it: the organiser gives it
 * another place, and the device itself can leave.
 */
export function LeaveOrChange({ place }: { readonly place: VolunteerPlace }) {
  const { t } = useTranslation("join");
  const nameOfPlace = useNameOfPlace();
  const [open, setOpen] = useState(false);
  const { leave, busy, isAway, waiting } = useLeaveTable();
  const name = ownName.use();
  return (
    <>
      <button type="button" className={css.change} onClick={() => setOpen(true)}>
        {t("change.open")}
      </button>
      {open && (
        <ConfirmDialog
          title={t("change.title")}
          cancel={t("change.stay")}
          confirm={t("change.leave")}
          busy={busy}
          onConfirm={leave}
          onClose={() => setOpen(false)}
        >
          <p className="strong">{t("change.now", { place: nameOfPlace(place) })}</p>
          <p>{t("change.other", { name })}</p>
          <p>{t("change.end")}</p>
          {waiting > 0 && <p className="strong">{t("change.waiting", { count: waiting })}</p>}
          {isAway && (
            <p className="alert" role="alert">
              {t("change.away")}
            </p>
          )}
        </ConfirmDialog>
      )}
    </>
  );
}
