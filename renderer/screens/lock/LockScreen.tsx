import { useMutation, useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useStanding } from "../../app/standing.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { LeaveDemo } from "../../parts/frame/LeaveDemo.tsx";
import { Panel, Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { HandOver } from "./HandOver.tsx";
import css from "./Lock.module.css";
import { LockLog } from "./LockLog.tsx";
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
