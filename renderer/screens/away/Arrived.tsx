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
  const hasMoved = told !== "";
  const [is, movedTo] = sentences[place.role];
  const station = place.role === "check-in" ? "" : testWord(place.test, "station");
  const left = leftBehind(place);
  return (
    <div className={css.arrived} role="status">
      <p className="strong">{t(hasMoved ? movedTo : is, { station })}</p>
      {left.map(({ is: kind, test, bib }) => (
        <p key={`${kind} ${test} ${bib}`}>
          {t(`arrived.kept.${kind}`, { bib, station: testWord(test, "station") })}
        </p>
      ))}
      <p>{t(nextOf(place))}</p>
      {place.role === "station" && <p className="small quiet">{t("arrived.paper")}</p>}
      <div>
        <Button kind="primary" onPress={begin}>
          {t("arrived.begin")}
        </Button>
      </div>
    </div>
  );
}

/** What is said of a place at first, and once the device had another one. */
const sentences = {
  "check-in": ["arrived.checkIn", "arrived.movedToCheckIn"],
  station: ["arrived.station", "arrived.movedToStation"],
  "second-judge": ["arrived.secondJudge", "arrived.movedToSecondJudge"],
} as const satisfies Record<VolunteerPlace["role"], unknown>;

function nextOf(place: VolunteerPlace) {
  if (place.role === "station") return `arrived.next.${clockOf(place.test)}` as const;
  return place.role === "check-in" ? "arrived.next.checkIn" : "arrived.next.secondJudge";
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
