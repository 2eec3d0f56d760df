import { useMutation, useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Link, Redirect } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { BackupLine, BackupTrouble } from "../../parts/backups/BackupLine.tsx";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Panel, Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { writeMoment } from "../../words/dates.ts";
import { useSay } from "../../words/say.ts";
import css from "./DayScreen.module.css";
import { DayState } from "./DayState.tsx";
import { EndLine } from "./EndLine.tsx";
import { Floor } from "./Floor.tsx";
import { Leagues } from "./Leagues.tsx";
import { NeedLink } from "./NeedLink.tsx";
import { Numbers } from "./Numbers.tsx";
import type { Overview } from "./overview.ts";
import { Plan } from "./Plan.tsx";
import { Rules } from "./Rules.tsx";
import { TestLines } from "./TestLines.tsx";

/** Ms between readings: calls grow old although nothing is entered. */
const refetchInterval = 30_000;

/** Shows the day at a glance: who is here, where they wait, what is missing, and what needs somebody now. */
export function DayScreen() {
  const { t } = useTranslation(["day", "summary"]);
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const day = current.data?.day;
  const overview = useQuery(
    trpc.day.overview.queryOptions(undefined, { enabled: day !== null, refetchInterval }),
  );
  if (day === null) return <Redirect to="/" />;
  const today = current.data?.today ?? "";
  const listed = Object.values(overview.data?.counts ?? {}).reduce((sum, count) => sum + count, 0);
  return (
    <Screen
      title={t("title")}
      ready={overview.isFetched}
      {...(day !== undefined && {
        actions: (
          <>
            {day.state !== "planned" && <LinkButton to="/summary">{t("summary:link")}</LinkButton>}
            <DayState day={day} today={today} listed={listed > 0} />
          </>
        ),
      })}
    >
      <BackupTrouble />
      {day?.state === "planned" && <Plan day={day} today={today} listed={listed} />}
      <Answer query={overview}>{(told) => <Glance overview={told} last={current.data?.earlier[0]} />}</Answer>
      {day !== undefined && <Rules day={day} />}
      {day?.state === "open" && <DayHistory dayId={day.id} />}
      <DevicesLine />
      <BackupLine />
    </Screen>
  );
}

interface GlanceProps {
  readonly overview: Overview;
  /** The newest closed day, whose people may come again. */
  readonly last: { readonly title: string } | undefined;
}

function Glance({ overview, last }: GlanceProps) {
  const trpc = useTRPC();
  const asked = trpc.day.forecast.queryOptions(undefined, {
    enabled: overview.state === "open",
    refetchInterval,
  });
  const { data: forecast } = useQuery(asked);
  if (overview.leagues.length === 0) return <FirstSteps open={overview.state === "open"} last={last} />;
  if (overview.state === "planned") return <Planned overview={overview} />;
  return (
    <>
      <Numbers overview={overview} forecast={forecast} />
      <EndLine forecast={forecast} />
      <div className={css.halves}>
        <TestLines tests={overview.tests} />
        <Needs needs={overview.needs} />
      </div>
      {overview.state === "open" && <Floor />}
      <Leagues leagues={overview.leagues} cards />
    </>
  );
}

/** Shows a planned day: only the list, and the rules of its tests. */
function Planned({ overview }: { readonly overview: Overview }) {
  const { t } = useTranslation(["day", "plan", "rehearsal"]);
  const count = Object.values(overview.counts).reduce((sum, each) => sum + each, 0);
  return (
    <>
      <Row gap={5} lines={3} align="center" wrap between>
        <p className="lead">{t("planned.listed", { count })}</p>
        <Row gap={3} lines={2} wrap>
          <LinkButton to="/plan">{t("plan:link")}</LinkButton>
          <LinkButton to="/rehearsal">{t("rehearsal:link")}</LinkButton>
        </Row>
      </Row>
      <Leagues leagues={overview.leagues} cards={false} />
    </>
  );
}

/** Lists the first steps of a day that has nobody on its list. */
function FirstSteps({ open, last }: { readonly open: boolean } & Pick<GlanceProps, "last">) {
  const { t } = useTranslation(["day", "plan", "rehearsal"]);
  return (
    <EmptyState
      title={t("first.title")}
      steps={[t("first.sheets"), ...(open ? [] : [t("first.open")]), t("first.checkIn")]}
      action={
        <Row gap={5} lines={3} align="center" wrap between>
          <LinkButton to="/sheets" kind="primary">
            {t("first.go")}
          </LinkButton>
          {last !== undefined && <ListAgain last={last} />}
          {!open && <LinkButton to="/plan">{t("plan:link")}</LinkButton>}
          {!open && <LinkButton to="/rehearsal">{t("rehearsal:link")}</LinkButton>}
        </Row>
      }
    />
  );
}

/** Lists the open tasks, each linked to the screen where it is done. */
function Needs({ needs }: { readonly needs: Overview["needs"] }) {
  const { t } = useTranslation("day");
  const say = useSay();
  return (
    <Panel title={t("now.title")} tone={needs.length > 0 ? "alert" : "plain"}>
      {needs.length === 0 && <p>{t("now.none")}</p>}
      <Stack as="ul" className={css.needs}>
        {needs.map((need) => (
          <li key={`${need.to} ${say(need.sentence)}`}>
            <NeedLink to={need.to} text={say(need.sentence)} />
          </li>
        ))}
      </Stack>
    </Panel>
  );
}

/** Lists the events of a day that was opened again: each opening and closing, by whom, and why. */
function DayHistory({ dayId }: { readonly dayId: number }) {
  const { t, i18n } = useTranslation("planning");
  const trpc = useTRPC();
  const history = useQuery(trpc.day.history.queryOptions({ dayId }));
  const lines = history.data ?? [];
  if (!lines.some(({ kind }) => kind === "reopened")) return null;
  return (
    <Section title={t("history.title")}>
      <Stack as="ol" gap={2}>
        {lines.map(({ id, kind, at, by, reason }) => (
          <li key={id}>
            {writeMoment(at, i18n.language)}: {t(`history.${kind}`, { by, reason })}
          </li>
        ))}
      </Stack>
    </Section>
  );
}

/** Says in one line whether devices at the stations reach this laptop, and leads to where that is turned on. */
function DevicesLine() {
  const { t } = useTranslation("devices");
  const trpc = useTRPC();
  const { data: view } = useQuery(trpc.network.view.queryOptions());
  if (view === undefined) return null;
  const told =
    view.on === null ? t("line.off") : t("line.on", { count: view.devices.length, address: view.on.address });
  return (
    <Row as="p" gap={4} lines={2} align="center" wrap>
      <span>{told}</span>
      {view.asking.length > 0 && <strong>{t("asking.title", { count: view.asking.length })}</strong>}
      <Link href="/devices">{t("title")}</Link>
    </Row>
  );
}

/** Puts the people of the last day on the empty list of the next one. */
function ListAgain({ last: { title } }: { readonly last: { readonly title: string } }) {
  const { t } = useTranslation("planning");
  const trpc = useTRPC();
  const listAgain = useMutation(
    trpc.day.listAgain.mutationOptions({
      onSuccess({ added }) {
        tell({ tone: "done", sentence: { key: "planning:again.done", values: { count: added, title } } });
      },
    }),
  );
  return (
    <Button busy={listAgain.isPending} onPress={() => listAgain.mutate()}>
      {t("again.do", { title })}
    </Button>
  );
}
