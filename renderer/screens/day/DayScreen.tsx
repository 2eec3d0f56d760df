import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Redirect } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { Answer } from "../../parts/Answer.tsx";
import { LinkButton } from "../../parts/Button.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { BackupLine, BackupTrouble } from "../home/backups/BackupLine.tsx";
import css from "./DayScreen.module.css";
import { DayState } from "./DayState.tsx";
import { FirstSteps } from "./FirstSteps.tsx";
import { Floor } from "./Floor.tsx";
import { Leagues } from "./Leagues.tsx";
import { Needs } from "./Needs.tsx";
import { Numbers } from "./Numbers.tsx";
import type { Overview } from "./overview.ts";
import { Rules } from "./Rules.tsx";
import { TestLines } from "./TestLines.tsx";

/** Minutes pass without anything being entered, and calls grow old. */
const refetchInterval = 30_000;

/** The day at one glance: who is here, where they wait, what is missing, what needs somebody now. */
export function DayScreen() {
  const { t } = useTranslation(["day", "summary"]);
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const day = current.data?.day;
  const overview = useQuery(
    trpc.day.overview.queryOptions(undefined, { enabled: day !== null, refetchInterval }),
  );
  if (day === null) return <Redirect to="/" />;
  const listed = (overview.data?.leagues.length ?? 0) > 0;
  return (
    <Screen
      title={t("title")}
      ready={overview.isFetched}
      {...(day !== undefined && {
        actions: (
          <>
            {day.state !== "planned" && <LinkButton to="/summary">{t("summary:link")}</LinkButton>}
            <DayState day={day} listed={listed} />
          </>
        ),
      })}
    >
      <BackupTrouble />
      <Answer query={overview}>{(told) => <Glance overview={told} />}</Answer>
      {day !== undefined && <Rules day={day} />}
      <BackupLine />
    </Screen>
  );
}

function Glance({ overview }: { readonly overview: Overview }) {
  if (overview.leagues.length === 0) return <FirstSteps open={overview.state === "open"} />;
  if (overview.state === "planned") return <Planned overview={overview} />;
  return (
    <>
      <Numbers overview={overview} />
      <div className={css.halves}>
        <TestLines tests={overview.tests} />
        <Needs needs={overview.needs} />
      </div>
      {overview.state === "open" && <Floor />}
      <Leagues leagues={overview.leagues} cards />
    </>
  );
}

/** Before the day opens there is only the list, and how the tests will be held. */
function Planned({ overview }: { readonly overview: Overview }) {
  const { t } = useTranslation(["day", "rehearsal"]);
  const count = Object.values(overview.counts).reduce((sum, each) => sum + each, 0);
  return (
    <>
      <div className={css.ways}>
        <p className={css.lead}>{t("planned.listed", { count })}</p>
        <LinkButton to="/rehearsal">{t("rehearsal:link")}</LinkButton>
      </div>
      <Leagues leagues={overview.leagues} cards={false} />
    </>
  );
}
