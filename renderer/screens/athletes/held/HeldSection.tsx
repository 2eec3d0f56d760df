import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { useTRPC, useTRPCClient } from "../../../app/client.tsx";
import { tell, tellDone } from "../../../app/messages.ts";
import { type Paper, saveMade, textFile } from "../../../app/saving.ts";
import { sentenceOf } from "../../../app/trouble.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import { PaperActions } from "../../../parts/controls/PaperActions.tsx";
import { Section } from "../../../parts/layout/Panel.tsx";
import { faultsOf, type TypedWalkUp, WalkUpFields } from "../../../parts/people/WalkUpFields.tsx";
import { dateHere } from "../../../words/dates.ts";
import { useSay } from "../../../words/say.ts";
import { JoinDialog } from "../join/JoinDialog.tsx";
import { EraseDialog } from "./EraseDialog.tsx";
import css from "./Held.module.css";
import { Matter } from "./Matter.tsx";
import type { Before, HeldAthlete } from "./types.ts";
import { useAmounts } from "./useAmounts.ts";

type Open = "mend" | "join" | "remove" | "erase" | null;

/** Offers what an athlete may ask of the organiser: to correct their data, to see all of it, to be erased. */
export function HeldSection({ athlete }: { readonly athlete: HeldAthlete }) {
  const { t } = useTranslation(["held", "steps"]);
  const trpc = useTRPC();
  const { athleteId } = athlete;
  const before = useQuery(trpc.people.beforeErasing.queryOptions({ athleteId }));
  const [open, setOpen] = useState<Open>(null);
  const close = () => setOpen(null);
  return (
    <Section title={t("title")}>
      <div className={css.matters}>
        <Matter title={t("mend.title")} what={t("mend.what")}>
          <Button onPress={() => setOpen("mend")}>{t("mend.do")}</Button>
          {before.data?.removable === true && (
            <Button kind="danger" onPress={() => setOpen("remove")}>
              {t("remove.do")}
            </Button>
          )}
        </Matter>
        <Matter title={t("steps:join.open")} what={t("steps:join.what")}>
          <Button onPress={() => setOpen("join")}>{t("steps:join.do")}</Button>
        </Matter>
        {before.data !== undefined && <HeldPapers athleteId={athleteId} before={before.data} />}
        <Matter title={t("erase.title")} what={t("erase.what")}>
          <Button kind="danger" disabled={before.data === undefined} onPress={() => setOpen("erase")}>
            {t("erase.do")}
          </Button>
        </Matter>
      </div>
      {open === "mend" && <MendDialog athlete={athlete} onClose={close} />}
      {open === "join" && <JoinDialog athlete={athlete} onClose={close} />}
      {open === "remove" && <RemoveDialog athlete={athlete} onClose={close} />}
      {open === "erase" && before.data !== undefined && (
        <EraseDialog athlete={athlete} before={before.data} onClose={close} />
      )}
    </Section>
  );
}

/** Prints or saves everything held about an athlete, to be handed to them. */
function HeldPapers({ athleteId, before }: { readonly athleteId: number; readonly before: Before }) {
  const { t } = useTranslation("held");
  const [paper, setPaper] = useState<Paper>("a4");
  const client = useTRPCClient();
  // The file's name has no name of anybody: systems remember the names of files.
  const nameOf = (kind: "json" | "pdf") => t("held.name", { date: dateHere(), kind });

  async function makeFile() {
    const held = await client.people.held.query({ athleteId });
    return textFile({ name: nameOf("json"), text: `${JSON.stringify(held, null, 2)}\n` });
  }
  return (
    <Matter title={t("held.title")} what={t("held.what", useAmounts(before))}>
      <PaperActions
        screen="held"
        path={`/print/held/${athleteId}`}
        paper={paper}
        onPaper={setPaper}
        fileName={nameOf("pdf")}
      />
      <Button onPress={() => void saveMade("held", makeFile)}>{t("held.file")}</Button>
    </Matter>
  );
}

/** Removes somebody who was entered by mistake. */
function RemoveDialog({ athlete, onClose }: { readonly athlete: HeldAthlete; readonly onClose: () => void }) {
  const { t } = useTranslation("held");
  const trpc = useTRPC();
  const [, go] = useLocation();
  const remove = useMutation(
    trpc.people.remove.mutationOptions({
      onSuccess() {
        tell({ tone: "done", sentence: { key: "held:remove.done" }, follows: "once" });
        go("/athletes");
      },
      onError: onClose,
    }),
  );
  return (
    <ConfirmDialog
      title={t("remove.title", { name: athlete.name })}
      cancel={t("remove.cancel")}
      confirm={t("remove.sure")}
      autoFocus
      busy={remove.isPending}
      onConfirm={() => remove.mutate({ athleteId: athlete.athleteId })}
      onClose={onClose}
    >
      <p>{t("remove.what")}</p>
    </ConfirmDialog>
  );
}

/** Corrects who an athlete is; a refusal is shown, and the typed text stays. */
function MendDialog({ athlete, onClose }: { readonly athlete: HeldAthlete; readonly onClose: () => void }) {
  const { t } = useTranslation("held");
  const say = useSay();
  const trpc = useTRPC();
  const [who, setWho] = useState<TypedWalkUp>(() => ({
    ...athlete,
    birthYear: String(athlete.birthYear ?? ""),
  }));
  const [tried, setTried] = useState(false);
  const mend = useMutation(
    trpc.people.mend.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess: tellDone({ key: "held:mend.kept" }, onClose),
    }),
  );
  const faults = faultsOf(who);

  function submit(): void {
    setTried(true);
    if (faults.size > 0) return;
    const { name, number, league, birthYear, category } = who;
    const year = birthYear.trim() === "" ? null : Number(birthYear);
    mend.mutate({ athleteId: athlete.athleteId, name, number, league, birthYear: year, category });
  }
  return (
    <ConfirmDialog
      title={t("mend.dialog")}
      cancel={t("mend.cancel")}
      confirm={t("mend.save")}
      kind="primary"
      busy={mend.isPending}
      onConfirm={submit}
      onClose={onClose}
    >
      {mend.isError && (
        <p className={`strong ${css.due}`} role="alert">
          {say(sentenceOf(mend.error))}
        </p>
      )}
      <div className={css.details}>
        <WalkUpFields
          who={who}
          onChange={(typed) => {
            setWho(typed);
            mend.reset();
          }}
          faults={tried ? faults : new Set()}
        />
      </div>
    </ConfirmDialog>
  );
}
