import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { secondsAfter } from "../../../../electron/domain/day/clock.ts";
import { useTRPC } from "../../../app/client.tsx";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { useClock } from "../clock.ts";
import type { Planned, Result } from "../types.ts";
import { useWork } from "../useWork.ts";
import { End } from "./End.tsx";
import { OverTime } from "./OverTime.tsx";
import { Working } from "./Working.tsx";
import { isHelpedByRoom } from "./worth.ts";

/** Works the plan out whenever something it follows from has changed, and shows what came of it. */
export function Outcome({ planned }: { readonly planned: Planned }) {
  const { t } = useTranslation("plan");
  const trpc = useTRPC();
  const work = useWork("plan", true);
  const { data: result } = useQuery(trpc.plan.result.queryOptions());
  return (
    <Stack gap={5}>
      {(work.at !== "done" || work.refusal !== null) && <Working work={work} label={t("working.plan")} />}
      {result != null && <Figures result={result} planned={planned} />}
    </Stack>
  );
}

interface FiguresProps {
  readonly result: Result;
  readonly planned: Planned;
}

/** Shows the end, what holds the day up and the stations over time; figures of other settings than now stay until new ones come. */
function Figures({ result: { begins, plan, stale }, planned }: FiguresProps) {
  const { t } = useTranslation("plan");
  const clock = useClock(begins);
  const { data: changes } = useQuery(useTRPC().plan.whatIfs.queryOptions());
  const roomHelps =
    changes == null || changes.stale || plan.holdsUp === null
      ? null
      : isHelpedByRoom(plan.holdsUp, changes.whatIfs);
  const breaks = planned.breaks.map(({ from, until }) => ({
    from: secondsAfter(planned.begins, from),
    until: secondsAfter(planned.begins, until),
  }));
  return (
    <>
      <p className="unseen" role="status">
        {!stale && t("end.said", clock.span(plan.end))}
      </p>
      <End plan={plan} clock={clock} roomHelps={roomHelps} />
      <OverTime plan={plan} breaks={breaks} begins={begins} clock={clock} />
    </>
  );
}
