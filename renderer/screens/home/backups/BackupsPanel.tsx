import { useMutation } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { bridge } from "../../../app/bridge.ts";
import { queryClient, useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { type BackupPlace, type BackupState, useBackups } from "../../../parts/backups/useBackups.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Panel } from "../../../parts/layout/Panel.tsx";
import { Progress } from "../../../parts/layout/Progress.tsx";
import { useSay } from "../../../words/say.ts";
import css from "./Backups.module.css";
import { PassphraseDialog } from "./PassphraseDialog.tsx";
import { PlaceLine } from "./PlaceLine.tsx";
import { RestoreDialog } from "./RestoreDialog.tsx";

/** Shows where backups are, how old the last good ones, and how to restore one. `first`: somebody comes to see it. */
export function BackupsPanel({ first }: { readonly first: boolean }) {
  const { t } = useTranslation("backups");
  const { data: state } = useBackups();
  const panel = useRef<HTMLDivElement>(null);
  const isHere = state !== undefined;
  useEffect(() => {
    if (!first || !isHere) return;
    panel.current?.scrollIntoView({ block: "start" });
    panel.current?.focus({ preventScroll: true });
  }, [first, isHere]);
  if (state === undefined) return null;
  return (
    <div ref={panel} tabIndex={-1}>
      <Panel paper title={t("title")}>
        <p className={css.lead}>{state.demo ? t("demo") : t("lead")}</p>
        {!state.demo && <Places state={state} />}
      </Panel>
    </div>
  );
}

function Places({ state }: { readonly state: BackupState }) {
  const { t } = useTranslation("backups");
  const say = useSay();
  const [goingBack, setGoingBack] = useState(false);
  const own = state.places.find(({ kind }) => kind === "own");
  const second = state.places.find(({ kind }) => kind === "second") ?? null;
  return (
    <>
      <div className={css.places}>
        {own !== undefined && (
          <PlaceLine title={t("own")} place={own} none={t("noneYet")}>
            <BackUpNow running={state.running} />
            <Button onPress={() => setGoingBack(true)}>{t("goBack")}</Button>
          </PlaceLine>
        )}
        <SecondFolder place={second} locked={state.locked} />
      </div>
      {state.toForget && <p className={css.trouble}>{say({ key: "backups:toForget" })}</p>}
      {goingBack && <RestoreDialog onClose={() => setGoingBack(false)} />}
    </>
  );
}

/** Makes a backup at once, and shows the progress of any backup being made. */
function BackUpNow({ running }: { readonly running: BackupState["running"] }) {
  const { t } = useTranslation("backups");
  const trpc = useTRPC();
  const make = useMutation(
    trpc.backups.now.mutationOptions({
      async onSuccess({ places }) {
        await queryClient.invalidateQueries(trpc.backups.pathFilter());
        const well = places.every(({ trouble }) => trouble === null);
        const sentence = { key: well ? "backups:made" : "backups:notMade" };
        tell({ tone: well ? "done" : "alert", sentence });
      },
    }),
  );
  useBackups(make.isPending);
  const words = running === null ? t("running.copying") : t(`running.${running.step}`);
  return (
    <>
      <Button busy={make.isPending} onPress={() => make.mutate()}>
        {t("now")}
      </Button>
      {(make.isPending || running !== null) && (
        <Progress
          label={t("running.label")}
          done={running?.step === "copying" ? running.done : null}
          total={running?.total ?? 1}
          words={words}
        />
      )}
    </>
  );
}

interface SecondFolderProps {
  readonly place: BackupPlace | null;
  readonly locked: boolean;
}

/** Chooses the folder of second backups, locks them, or stops them. */
function SecondFolder({ place, locked }: SecondFolderProps) {
  const { t } = useTranslation("backups");
  const trpc = useTRPC();
  const [locking, setLocking] = useState(false);
  const again = () => queryClient.invalidateQueries(trpc.backups.pathFilter());
  const choose = useMutation({
    mutationFn: () =>
      bridge?.chooseBackupFolder() ?? Promise.resolve({ chosen: false, trouble: null } as const),
    async onSuccess(outcome) {
      if (!outcome.chosen && outcome.trouble !== null) tell({ tone: "alert", sentence: outcome.trouble });
      await again();
    },
  });
  const leave = useMutation(
    trpc.backups.leaveSecond.mutationOptions({
      async onSuccess() {
        tell({ tone: "done", sentence: { key: "backups:left" } });
        await again();
      },
    }),
  );
  return (
    <PlaceLine
      title={t("second")}
      place={place}
      none={place === null ? t("noSecond") : t("noneThere")}
      fact={locked ? t("locked") : t("open")}
    >
      <Button busy={choose.isPending} onPress={() => choose.mutate()}>
        {place === null ? t("choose") : t("change")}
      </Button>
      {place !== null && <Button onPress={() => setLocking(true)}>{locked ? t("relock") : t("lock")}</Button>}
      {place !== null && (
        <Button busy={leave.isPending} onPress={() => leave.mutate()}>
          {t("leave")}
        </Button>
      )}
      {locking && <PassphraseDialog locked={locked} onClose={() => setLocking(false)} />}
    </PlaceLine>
  );
}
