import { useTranslation } from "react-i18next";
import type { DayPlan } from "../../../../electron/domain/plan/told.ts";
import { BigNumber } from "../../../parts/marks/BigNumber.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import { EndBetween } from "../../../parts/plan/EndBetween.tsx";
import type { DayClock } from "../clock.ts";
import css from "../Plan.module.css";
import { minutesOf } from "./worth.ts";

interface EndProps {
  readonly plan: Pick<DayPlan, "end" | "holdsUp" | "waits">;
  readonly clock: DayClock;
  /** Whether more room alone at the station that holds the day up would help; null while nobody knows. */
  readonly roomHelps: boolean | null;
}

/** Shows when the day is done, what holds it up, and how long athletes wait. */
export function End({ plan, clock, roomHelps }: EndProps) {
  const { t } = useTranslation("plan");
  const { end, waits } = plan;
  return (
    <div className={css.numbers}>
      <EndBetween {...clock.instants(end)} note={t("end.note", { middle: clock.time(end.middle) })} />
      <HoldsUp plan={plan} roomHelps={roomHelps} />
      <BigNumber
        label={t("waits.label")}
        number={String(minutesOf(waits.mean))}
        unit={t("waits.unit")}
        note={t("waits.longest", { count: minutesOf(waits.longest) })}
        size="row"
      />
    </div>
  );
}

function HoldsUp({ plan: { holdsUp }, roomHelps }: Omit<EndProps, "clock">) {
  const { t } = useTranslation("plan");
  const ofStation = roomHelps === null ? null : t(roomHelps ? "holdsUp.helps" : "holdsUp.little");
  const note = holdsUp === null ? t("holdsUp.noneNote") : ofStation;
  return (
    <BigNumber
      label={t("holdsUp.label")}
      number={holdsUp === null ? t("holdsUp.none") : <TestMark test={holdsUp} name="ability" />}
      note={note}
      size="row"
    />
  );
}
