import { useMutation } from "@tanstack/react-query";
import { type ReactNode, useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { bridge } from "../../../app/bridge.ts";
import { queryClient, useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import {
  type BackupPlace,
  type BackupState,
  useBackups,
  useWhen,
} from "../../../parts/backups/useBackups.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import { Panel } from "../../../parts/layout/Panel.tsx";
import { Progress } from "../../../parts/layout/Progress.tsx";
import { useSay } from "../../../words/say.ts";
import css from "./Backups.module.css";
import { PassphraseDialog } from "./PassphraseDialog.tsx";
import { RestoreDialog } from "./RestoreDialog.tsx";

/**
 * Shows the places of backups, the time of the last good one in each, and the way to restore one. `first`: somebody comes
 * to see it.
 */
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
        <p className={`quiet ${css.lead}`}>{state.demo ? t("demo") : t("lead")}</p>
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

interface PlaceLineProps {
  readonly title: string;
  /** Null where no folder was chosen. */
  readonly place: BackupPlace | null;
  /** The text while there is no backup yet. */
  readonly none: string;
  /** One more fact, such as whether it is locked. */
  readonly fact?: string;
  /** The actions on the place. */
  readonly children: ReactNode;
}

/** Shows one place of backups: its last good one, its folder, its trouble and its actions. */
function PlaceLine({ title, place, none, fact, children }: PlaceLineProps) {
  const { t } = useTranslation("backups");
  const say = useSay();
  const when = useWhen();
  const last = place?.last ?? null;
  return (
    <Stack as="section" gap={2} top className={css.place} aria-label={title}>
      <h3 className="lead">{title}</h3>
      <p className="strong">{last === null ? none : t("last", { when: when(last) })}</p>
      {place !== null && !place.there && <p className="quiet">{t("away")}</p>}
      {place?.trouble != null && <p className={css.trouble}>{say(place.trouble)}</p>}
      {place !== null && (
        <Row as="p" gap={4} lines={0} wrap className={`small quiet ${css.where}`} title={place.folder}>
          {t("where", { folder: place.folder })}
          {fact !== undefined && <span>{fact}</span>}
        </Row>
      )}
      <Row gap={3} align="center" wrap className={css.actions}>
        {children}
      </Row>
    </Stack>
  );
}
