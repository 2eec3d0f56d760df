import { useMutation, useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Link, useLocation } from "wouter";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { useTestWords } from "../../app/testWords.ts";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { LeaveDemo } from "../../parts/frame/LeaveDemo.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { writeDate } from "../../words/dates.ts";
import { BackupsPanel } from "./backups/BackupsPanel.tsx";
import css from "./HomeScreen.module.css";
import { JustClosed } from "./JustClosed.tsx";
import { NewDayPanel } from "./NewDayForm.tsx";
import { ReopenDay } from "./ReopenDay.tsx";

/**
 * Shows the first screen: start a day, go on with one, or open the demo. `toBackups`: somebody comes to see the
 * backups.
 */
export function HomeScreen({ toBackups = false }: { readonly toBackups?: boolean }) {
  const { t } = useTranslation("home");
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const atHand = current.data?.day ?? null;
  return (
    <Screen
      title={atHand === null ? t("title") : t("titleAtHand")}
      lead={t("lead")}
      actions={<Help mayJoin={current.data?.kind === "own"} />}
      ground="floor"
      ready={current.isFetched}
    >
      <OrderOfTests />
      <Answer query={current}>
        {({ day, kind, today, earlier }) => (
          <>
            {day === null && <JustClosed days={earlier} today={today} />}
            <div className={css.ways}>
              {day !== null && <DayAtHand day={day} />}
              {day === null && kind === "own" && <NewDayPanel today={today} />}
              {kind === "own" ? <DemoPanel /> : <InDemo />}
            </div>
            {earlier.length > 0 && <EarlierDays days={earlier} reopening={day === null} />}
            <BackupsPanel first={toBackups} />
          </>
        )}
      </Answer>
    </Screen>
  );
}

/** Links to the report for a helper, to the lock, and to another laptop's table. */
function Help({ mayJoin }: { readonly mayJoin: boolean }) {
  const { t } = useTranslation(["home", "atTable"]);
  return (
    <p className={css.help}>
      {t("help.question")} <Link href="/report">{t("help.report")}</Link>
      <br />
      {t("help.lockQuestion")} <Link href="/lock">{t("help.lock")}</Link>
      {mayJoin && (
        <>
          <br />
          {t("atTable:home.question")} <Link href="/join">{t("atTable:home.do")}</Link>
        </>
      )}
    </p>
  );
}

/** Links back to the day at hand. */
function DayAtHand({ day }: { readonly day: { readonly title: string; readonly date: string } }) {
  const { t, i18n } = useTranslation("home");
  return (
    <Panel paper title={day.title}>
      <p>{writeDate(day.date, i18n.language)}</p>
      <div>
        <LinkButton kind="primary" size="large" to="/day">
          {t("own.resume")}
        </LinkButton>
      </div>
    </Panel>
  );
}

/** Opens the demo, an invented day. */
function DemoPanel() {
  const { t } = useTranslation("home");
  const [, go] = useLocation();
  const trpc = useTRPC();
  const open = useMutation(
    trpc.day.openDemo.mutationOptions({
      async onSuccess() {
        await queryClient.invalidateQueries();
        go("/day");
      },
    }),
  );
  return (
    <Panel paper title={t("demo.title")}>
      <p>{t("demo.what")}</p>
      <div>
        <Button size="large" busy={open.isPending} onPress={() => open.mutate()}>
          {t("demo.open")}
        </Button>
      </div>
    </Panel>
  );
}

/** Says that the demo has no days of one's own: they would be thrown away with it. */
function InDemo() {
  const { t } = useTranslation("home");
  return (
    <Panel paper title={t("inDemo.title")}>
      <p>{t("inDemo.what")}</p>
      <div>
        <LeaveDemo />
      </div>
    </Panel>
  );
}

/** Shows the five tests along a painted line, in the order in which a day holds them. */
function OrderOfTests() {
  const { t } = useTranslation(["home", "common"]);
  const testWord = useTestWords();
  return (
    <section aria-label={t("home:order.title")}>
      <ol className={css.line}>
        {testCodes.map((test) => (
          <li key={test} data-test={test}>
            <TestMark test={test} size="hero" look="painted" />
            <span className="strong">{testWord(test, "name")}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

interface EarlierDaysProps {
  readonly days: readonly { readonly id: number; readonly title: string; readonly date: string }[];
  /** True if a closed day can be opened again: while no other day is planned or open. */
  readonly reopening: boolean;
}

/** Lists the closed days, newest first, with what can still be done with each. */
function EarlierDays({ days, reopening }: EarlierDaysProps) {
  const { t, i18n } = useTranslation(["home", "cards"]);
  return (
    <Panel paper title={t("earlier.title")}>
      <Stack as="ul" gap={2} className={css.earlier}>
        {days.map((day) => (
          <li key={day.id}>
            <strong>{day.title}</strong>
            <span>{writeDate(day.date, i18n.language)}</span>
            <Link className={css.summary} href={`/summary/${day.id}`}>
              {t("earlier.summary")}
              <span className="unseen">{day.title}</span>
            </Link>
            <Link className={css.summary} href={`/cards/${day.id}/all`}>
              {t("cards:link")} <span className="unseen">{day.title}</span>
            </Link>
            {reopening && <ReopenDay day={day} />}
          </li>
        ))}
      </Stack>
      <Row gap={3} wrap>
        <LinkButton to="/bundle">{t("earlier.share")}</LinkButton>
        <LinkButton to="/athletes">{t("earlier.athletes")}</LinkButton>
      </Row>
    </Panel>
  );
}
