import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { queryClient, useTRPC } from "../../../app/client.tsx";
import { useInitials } from "../../../app/initials.tsx";
import { tell } from "../../../app/messages.ts";
import { sentenceOf } from "../../../app/trouble.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import { Dialog } from "../../../parts/controls/Dialog.tsx";
import { TextField } from "../../../parts/controls/TextField.tsx";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { useSay } from "../../../words/say.ts";
import css from "./Held.module.css";
import type { Before, HeldAthlete } from "./types.ts";
import { useAmounts } from "./useAmounts.ts";

interface EraseDialogProps {
  readonly athlete: HeldAthlete;
  readonly before: Before;
  readonly onClose: () => void;
}

/** Says what is erased and what stays; erases once the organiser has typed the athlete's name or number. */
export function EraseDialog({ athlete, before, onClose }: EraseDialogProps) {
  const { t } = useTranslation("held");
  const say = useSay();
  const { ask } = useInitials();
  const erase = useErase();
  const [typed, setTyped] = useState("");
  // One for as long as the question stands, so that pressing twice erases once.
  const [erasureId] = useState(() => crypto.randomUUID());
  const { name, number } = athlete;
  const label = number === "" ? t("erase.typed") : t("erase.typedNumber", { number });

  async function submit(): Promise<void> {
    const by = await ask();
    if (by === null || erase.isPending) return;
    erase.mutate({ erasureId, athleteId: athlete.athleteId, typed, by });
  }
  if (before.blocked !== null) {
    const actions = <Button onPress={onClose}>{t("erase.close")}</Button>;
    return (
      <Dialog onClose={onClose} title={t("erase.dialog", { name })} actions={actions}>
        <p>{say(before.blocked)}</p>
      </Dialog>
    );
  }
  return (
    <ConfirmDialog
      title={t("erase.dialog", { name })}
      cancel={t("erase.cancel")}
      confirm={t("erase.sure")}
      busy={erase.isPending}
      onConfirm={() => void submit()}
      onClose={onClose}
    >
      <EraseSentences before={before} />
      <TextField
        label={label}
        value={typed}
        onChange={(now) => {
          setTyped(now);
          erase.reset();
        }}
        error={erase.isError ? say(sentenceOf(erase.error)) : null}
        maxLength={200}
        autoFocus
        onEnter={() => void submit()}
      />
    </ConfirmDialog>
  );
}

/** Erases, empties this window's memory, and goes to a screen without an athlete. */
function useErase() {
  const trpc = useTRPC();
  const [, go] = useLocation();
  return useMutation(
    trpc.people.erase.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess({ notWiped }) {
        const isDone = notWiped === null;
        const sentence = notWiped ?? { key: "held:erase.done" };
        tell({ tone: isDone ? "done" : "alert", sentence, follows: "once" });
        go("/athletes");
        // Data that no screen shows any more would stay in memory for minutes.
        queryClient.removeQueries({ type: "inactive" });
      },
    }),
  );
}

/** Says what becomes of the backups, before anybody decides. */
function BackupSentences({ backups }: { readonly backups: Before["backups"] }) {
  const { t } = useTranslation("planning");
  const { anew, gone, setAside, away } = backups;
  return (
    <>
      <li>{anew === 0 ? t("backups.none") : t("backups.anew", { count: anew })}</li>
      {gone > 0 && <li>{t("backups.gone", { count: gone })}</li>}
      {setAside > 0 && <li>{t("backups.setAside")}</li>}
      {away && <li>{t("backups.away")}</li>}
    </>
  );
}

/** Says what is erased, what stays, what is out of reach, and what would bring it back. */
function EraseSentences({ before }: { readonly before: Before }) {
  const { t } = useTranslation(["held", "planning"]);
  const { nameless, mentions } = before;
  const stays = nameless === 0 ? t("erase.nothing") : t("erase.nameless", { count: nameless });
  return (
    <Stack as="ul" gap={3} className={css.points}>
      <li>
        {t("erase.goes", useAmounts(before))} {mentions > 0 && t("erase.mentions", { count: mentions })}
      </li>
      <li>{stays}</li>
      <BackupSentences backups={before.backups} />
      <li>{t("erase.reach")}</li>
      <li>{t("erase.back")}</li>
      <li data-weight="alert">{t("erase.never")}</li>
    </Stack>
  );
}
