import { useState } from "react";
import { useTranslation } from "react-i18next";
import { ownName } from "../../app/table.ts";
import { useNameOfPlace, type VolunteerPlace } from "../../parts/devices/places.ts";
import { LeaveDialog } from "../../parts/frame/LeaveDialog.tsx";
import css from "./DeviceLine.module.css";

/**
 * The key beside what a device is used for, for whoever wants to do something else with it: the organiser gives it
 * another place, and the device itself can leave.
 */
export function LeaveOrChange({ place }: { readonly place: VolunteerPlace }) {
  const { t } = useTranslation("join");
  const nameOfPlace = useNameOfPlace();
  const [open, setOpen] = useState(false);
  const name = ownName.use();
  return (
    <>
      <button type="button" className={css.change} onClick={() => setOpen(true)}>
        {t("change.open")}
      </button>
      {open && (
        <LeaveDialog title={t("change.title")} onClose={() => setOpen(false)}>
          <p className="strong">{t("change.now", { place: nameOfPlace(place) })}</p>
          <p>{t("change.other", { name })}</p>
          <p>{t("change.end")}</p>
        </LeaveDialog>
      )}
    </>
  );
}
