import { useTranslation } from "react-i18next";
import type { Break } from "../../../../electron/domain/plan/hall.ts";
import type { DayPlan, StationLoad } from "../../../../electron/domain/plan/told.ts";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { Section } from "../../../parts/layout/Panel.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import type { LoadFrame } from "../../../parts/plots/draw-load.ts";
import { LoadLegend, LoadPlot, LoadTimes } from "../../../parts/plots/LoadPlot.tsx";
import type { DayClock } from "../clock.ts";
import css from "../Plan.module.css";
import { frameOf, mostWaiting, queueTime } from "./busy.ts";

interface OverTimeProps {
  readonly plan: DayPlan;
  readonly breaks: readonly Break[];
  /** The instant at which it begins, ISO 8601. */
  readonly begins: string;
  readonly clock: DayClock;
}

/** Pictures the five stations under each other over the day: how full each is, and how many wait for it. */
export function OverTime({ plan, breaks, begins, clock }: OverTimeProps) {
  const { t } = useTranslation("plan");
  const frame = frameOf(plan, breaks, begins);
  return (
    <Section title={t("overTime.title")}>
      <LoadLegend breaks={frame.breaks.length > 0} />
      <Stack>
        <Stack as="ol">
          {plan.stations.map((load) => (
            <OneStation key={load.test} load={load} frame={frame} clock={clock} />
          ))}
        </Stack>
        <div className={css.station}>
          <span />
          <LoadTimes frame={frame} write={clock.time} />
        </div>
      </Stack>
    </Section>
  );
}

interface OneStationProps extends Pick<OverTimeProps, "clock"> {
  readonly load: StationLoad;
  readonly frame: LoadFrame;
}

/** Says a station's day in words beside its picture, which is for the eye alone. */
function OneStation({ load, frame, clock }: OneStationProps) {
  const { t } = useTranslation("plan");
  const queue = queueTime(load);
  return (
    <li className={css.station} data-test={load.test}>
      <div>
        <span className="strong">
          <TestMark test={load.test} size="small" name="ability" />
        </span>
        <p className={`small quiet ${css.says}`}>
          {queue === null
            ? t("overTime.noQueue")
            : t("overTime.queue", {
                ...{ from: clock.time(queue.from), until: clock.time(queue.until) },
                count: mostWaiting(load),
              })}
        </p>
      </div>
      <LoadPlot frame={frame} load={load} />
    </li>
  );
}
