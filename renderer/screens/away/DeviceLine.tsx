import { type ReactNode, useState } from "react";
import { useTranslation } from "react-i18next";
import { isWaiting, keptHere } from "../../app/device-keep.ts";
import { useHandIn } from "../../app/hand-in.ts";
import { useInitials } from "../../app/initials.tsx";
import { useRefused } from "../../app/kept-entries.ts";
import { useStanding } from "../../app/standing.tsx";
import { tableAway } from "../../app/table.ts";
import { Button } from "../../parts/controls/Button.tsx";
import type { VolunteerPlace } from "../../parts/devices/places.ts";
import { Row } from "../../parts/flow/Stack.tsx";
import { HandedOver } from "../../parts/frame/HandedOver.tsx";
import { useWriteTime } from "../../words/dates.ts";
import { Arrived } from "./Arrived.tsx";
import css from "./DeviceLine.module.css";
import { LeaveOrChange } from "./LeaveOrChange.tsx";
import { RefusedDialog } from "./RefusedDialog.tsx";

/** On a device: the line of what waits, above the frame, which gets the rest of the window. */
export function WithDeviceLine({ children }: { readonly children: ReactNode }) {
  const { post } = useStanding();
  const place = post.role === "organiser" ? null : post;
  return (
    <div className={css.device}>
      <div>
        <DeviceLine place={place} />
        {place !== null && <Arrived place={place} />}
      </div>
      {children}
    </div>
  );
}

/** What a device always shows: whether the table is there, what waits for it or was refused, and whose initials. */
function DeviceLine({ place }: { readonly place: VolunteerPlace | null }) {
  const { t } = useTranslation("join");
  const writeTime = useWriteTime();
  useHandIn(t("handedIn"));
  const since = tableAway.use();
  const waiting = keptHere.use().filter(isWaiting).length;
  const refused = useRefused().length;
  const { initials } = useInitials();
  // Who an athlete is, and what they agree to, is kept by the table alone: nothing of it waits on a device.
  const hasForm = place?.role === "check-in" && since !== null;
  const awayKey = hasForm ? "here.awayCheckIn" : "here.awaySince";
  const [open, setOpen] = useState(false);
  return (
    <Row gap={3} lines={0} align="center" wrap className={css.line} data-away={since !== null || refused > 0}>
      {place !== null && <HandedOver post={place} />}
      {place !== null && <LeaveOrChange place={place} />}
      <p role="status">
        {since === null ? t("here.there") : t(awayKey, { time: writeTime(since) })}
        {!hasForm && since === null && waiting === 0 && ` · ${t("here.noneWait")}`}
        {!hasForm && waiting > 0 && ` · ${t("here.wait", { count: waiting })}`}
        {initials !== null && ` · ${initials}`}
      </p>
      {refused > 0 && (
        <Button onPress={() => setOpen(true)}>{t("refusedHere.open", { count: refused })}</Button>
      )}
      {open && refused > 0 && <RefusedDialog onClose={() => setOpen(false)} />}
    </Row>
  );
}
