import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Redirect } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { Answer } from "../../parts/Answer.tsx";
import { Screen } from "../../parts/Screen.tsx";
import css from "./DayScreen.module.css";
import { DayState } from "./DayState.tsx";
import { FirstSteps } from "./FirstSteps.tsx";
import { Leagues } from "./Leagues.tsx";
import { Needs } from "./Needs.tsx";
import { Numbers } from "./Numbers.tsx";
import type { Overview } from "./overview.ts";
import { TestLines } from "./TestLines.tsx";

/** The day at one glance: who is here, where they wait, what is missing, what needs somebody now. */
export function DayScreen() {
  const { t } = useTranslation("day");
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const day = current.data?.day;
  const overview = useQuery(trpc.day.overview.queryOptions(undefined, { enabled: day !== null }));
  if (day === null) return <Redirect to="/" />;
  return (
    <Screen
      title={t("title")}
      ready={overview.isFetched}
      {...(day !== undefined && { actions: <DayState day={day} /> })}
    >
      <Answer query={overview}>{(told) => <Glance overview={told} />}</Answer>
    </Screen>
  );
}

function Glance({ overview }: { readonly overview: Overview }) {
  if (overview.leagues.length === 0) return <FirstSteps open={overview.state === "open"} />;
  return (
    <>
      <Numbers overview={overview} />
      <div className={css.halves}>
        <TestLines tests={overview.tests} />
        <Needs needs={overview.needs} />
      </div>
      <Leagues leagues={overview.leagues} />
    </>
  );
}
