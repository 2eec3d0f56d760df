import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Redirect } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { Given } from "./given/Given.tsx";
import { Nobody } from "./Nobody.tsx";
import css from "./Plan.module.css";
import { Changes } from "./told/Changes.tsx";
import { Outcome } from "./told/Outcome.tsx";
import { Timetable } from "./told/Timetable.tsx";
import { ToldBefore } from "./told/ToldBefore.tsx";
import { headCount, type Planned } from "./types.ts";

/** Shows the plan of a day: when it will be done, what holds it up, what one more would bring, and who is to be there when. */
export function PlanScreen() {
  const { t } = useTranslation("plan");
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const day = current.data?.day;
  const planned = useQuery(trpc.plan.settings.queryOptions(undefined, { enabled: day != null }));
  if (day === null) return <Redirect to="/" />;
  return (
    <Screen title={t("title")} ready={planned.isFetched}>
      <Answer query={planned}>{(told) => <Parts planned={told} />}</Answer>
    </Screen>
  );
}

/** A day that is planned is worked out at once; of one that has begun, what was told before it is shown. */
function Parts({ planned }: { readonly planned: Planned }) {
  const isAhead = planned.state === "planned";
  if (isAhead && headCount(planned) === 0) return <Nobody planned={planned} />;
  return (
    <>
      <div className={css.halves}>
        {isAhead ? <Ahead planned={planned} /> : <ToldBefore planned={planned} />}
        <Given planned={planned} />
      </div>
      {isAhead && <Timetable />}
    </>
  );
}

function Ahead({ planned }: { readonly planned: Planned }) {
  return (
    <Stack gap={5}>
      <Outcome key={planned.savedAt} planned={planned} />
      <Changes planned={planned} />
    </Stack>
  );
}
