import { useMutation, useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import type { Post } from "../../../electron/domain/lock/post.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import type { Answers } from "../../app/answers.ts";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { firstPathOf, useStanding } from "../../app/standing.tsx";
import { useTestWords } from "../../app/testWords.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { LeaveDemo } from "../../parts/frame/LeaveDemo.tsx";
import { Panel, Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { writeDate, writeTime } from "../../words/dates.ts";
import css from "./Lock.module.css";
import { PinMatters } from "./PinMatters.tsx";
import { SetPin } from "./SetPin.tsx";

/** Shows the organiser's settings of the lock: the PIN, the next user, and the time until it locks itself. */
export function LockScreen() {
  const { t } = useTranslation("lock");
  const { pinSet } = useStanding();
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const demo = current.data?.kind === "demo";
  return (
    <Screen title={t("title")} lead={t("lead")} ready={current.isFetched}>
      {pinSet ? <WithPin /> : demo ? <InDemo /> : <First />}
      <LockLog />
    </Screen>
  );
}

function First() {
  const { t } = useTranslation("lock");
  return (
    <Panel title={t("first.title")}>
      <p className="measure">{t("first.what")}</p>
      <SetPin />
    </Panel>
  );
}

function InDemo() {
  const { t } = useTranslation("lock");
  return (
    <Panel title={t("demo.title")}>
      <p className="measure">{t("demo.what")}</p>
      <div>
        <LeaveDemo />
      </div>
    </Panel>
  );
}

function WithPin() {
  const { t } = useTranslation("lock");
  return (
    <>
      <HandOver />
      <div className={css.halves}>
        <Section title={t("idle.title")}>
          <IdleTime />
        </Section>
        <Section title={t("pin.title")}>
          <PinMatters />
        </Section>
      </div>
    </>
  );
}

const usual = [5, 10, 20, 60];

/** Sets the minutes without a touch after which the organiser's desk locks itself. */
function IdleTime() {
  const { t } = useTranslation("lock");
  const trpc = useTRPC();
  const { idleMinutes } = useStanding();
  const set = useMutation(trpc.lock.setIdle.mutationOptions());
  const choices = [...new Set([...usual, idleMinutes])].sort((a, b) => a - b);
  return (
    <Choice
      label={t("idle.label")}
      help={t("idle.help")}
      value={String(set.isPending ? set.variables.minutes : idleMinutes)}
      onChange={(minutes) => set.mutate({ minutes: Number(minutes) })}
      options={choices.map((minutes) => ({
        value: String(minutes),
        label: t("idle.minutes", { count: minutes }),
      }))}
    />
  );
}

type Volunteer = Exclude<Post, { role: "organiser" }>;

/** Hands the desk over with one press; only the PIN takes it back. */
function HandOver() {
  const { t } = useTranslation(["lock", "common"]);
  const trpc = useTRPC();
  const [, go] = useLocation();
  const standing = () => queryClient.invalidateQueries(trpc.lock.standing.queryFilter());
  const handOver = useMutation(
    trpc.lock.handOver.mutationOptions({
      async onSuccess(_nothing, { to }) {
        go(firstPathOf(to as Volunteer));
        await standing();
      },
    }),
  );
  const lockNow = useMutation(trpc.lock.lockNow.mutationOptions({ onSuccess: standing }));
  const busy = handOver.isPending || lockNow.isPending;
  const give = (to: Volunteer) => handOver.mutate({ to });
  return (
    <Panel title={t("handOver.title")}>
      <p className="measure">{t("handOver.what")}</p>
      <Row gap={3} wrap>
        <Button size="large" busy={busy} onPress={() => give({ role: "check-in" })}>
          {t("common:place.checkIn")}
        </Button>
        {testCodes.map((test) => (
          <Button key={test} size="large" busy={busy} onPress={() => give({ role: "station", test })}>
            <TestMark test={test} size="small" name="station" />
          </Button>
        ))}
      </Row>
      <p className="measure">{t("handOver.lockWhat")}</p>
      <div>
        <Button kind="primary" size="large" busy={busy} onPress={() => lockNow.mutate()}>
          {t("handOver.lock")}
        </Button>
      </div>
    </Panel>
  );
}

type Note = Answers["lock"]["log"][number];

/** Lists the lock's events, newest first, those while the organiser was away too. */
function LockLog() {
  const { t, i18n } = useTranslation("lock");
  const trpc = useTRPC();
  const log = useQuery(trpc.lock.log.queryOptions());
  if (log.data === undefined || log.data.length === 0) return null;
  return (
    <Section title={t("log.title")}>
      <Stack as="ol" gap={1} className={css.log}>
        {log.data.map((note) => (
          <li key={`${note.at} ${note.what}`} data-what={note.what}>
            <time dateTime={note.at}>
              {writeDate(note.at.slice(0, 10), i18n.language)}, {writeTime(note.at, i18n.language)}
            </time>
            <Said note={note} />
          </li>
        ))}
      </Stack>
    </Section>
  );
}

function Said({ note }: { readonly note: Note }) {
  const { t } = useTranslation(["lock", "common"]);
  const testWord = useTestWords();
  const { what, to, test, why, count } = note;
  if (what === "handed-over") {
    const name = test === undefined ? t("common:place.checkIn") : testWord(test, "ability");
    return <span>{t("log.handed-over", { to: to === undefined ? "" : name })}</span>;
  }
  if (what === "locked") return <span>{t(`log.locked.${why ?? "hand"}`)}</span>;
  if (what === "wrong") return <span>{t("log.wrong", { count: count ?? 1 })}</span>;
  return <span>{t(`log.${what}`)}</span>;
}
