import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { clockOf } from "../../../electron/domain/heats/fold.ts";
import { arrivedAt } from "../../app/arrival.ts";
import { useInitials } from "../../app/initials.tsx";
import { type KeptDraft, keptDrafts } from "../../app/kept-drafts.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Button } from "../../parts/controls/Button.tsx";
import type { VolunteerPlace } from "../../parts/devices/places.ts";
import css from "./DeviceLine.module.css";

/** Says what the device is now and what to do next, after it was let in or got another place, until somebody begins. */
export function Arrived({ place }: { readonly place: VolunteerPlace }) {
  const { t } = useTranslation("join");
  const testWord = useTestWords();
  const now = JSON.stringify(place);
  const told = arrivedAt.use();
  const begin = () => arrivedAt.set(now);
  useOnceBegun(begin);
  if (told === now) return null;
  const isStation = place.role === "station";
  const hasMoved = told !== "";
  const left = leftBehind(place);
  return (
    <div className={css.arrived} role="status">
      <p className="strong">
        {isStation
          ? t(hasMoved ? "arrived.movedToStation" : "arrived.station", {
              station: testWord(place.test, "station"),
            })
          : t(hasMoved ? "arrived.movedToCheckIn" : "arrived.checkIn")}
      </p>
      {left.map(({ is, test, bib }) => (
        <p key={`${is} ${test} ${bib}`}>
          {t(`arrived.kept.${is}`, { bib, station: testWord(test, "station") })}
        </p>
      ))}
      <p>{isStation ? t(`arrived.next.${clockOf(place.test)}`) : t("arrived.next.checkIn")}</p>
      {isStation && <p className="small quiet">{t("arrived.paper")}</p>}
      <div>
        <Button kind="primary" onPress={begin}>
          {t("arrived.begin")}
        </Button>
      </div>
    </div>
  );
}

/** Returns what is half typed at the device's other stations. */
function leftBehind(place: VolunteerPlace): readonly KeptDraft[] {
  return keptDrafts().filter(({ test }) => place.role !== "station" || place.test !== test);
}

/** Whoever has said who they are has begun. */
function useOnceBegun(begin: () => void): void {
  const { initials } = useInitials();
  const before = useRef(initials);
  useEffect(() => {
    if (before.current === null && initials !== null) begin();
    before.current = initials;
  });
}
