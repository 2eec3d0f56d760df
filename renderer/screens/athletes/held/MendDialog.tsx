import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { sentenceOf } from "../../../app/trouble.ts";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import { faultsOf, type TypedWalkUp, WalkUpFields } from "../../../parts/people/WalkUpFields.tsx";
import { useSay } from "../../../words/say.ts";
import css from "./Held.module.css";
import type { HeldAthlete } from "./types.ts";

/** Corrects who an athlete is; a refusal is shown, and the typed text stays. */
export function MendDialog({
  athlete,
  onClose,
}: {
  readonly athlete: HeldAthlete;
  readonly onClose: () => void;
}) {
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
      onSuccess() {
        tell({ tone: "done", sentence: { key: "held:mend.kept" } });
        onClose();
      },
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
        <p className={css.due} role="alert">
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
