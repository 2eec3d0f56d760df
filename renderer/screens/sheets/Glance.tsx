import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { BigNumber } from "../../parts/BigNumber.tsx";
import { Button } from "../../parts/Button.tsx";
import css from "./Glance.module.css";
import type { Counts, Preview } from "./sheet.ts";
import type { SheetInHand } from "./useSheet.ts";

interface GlanceProps {
  readonly preview: Preview;
  readonly sheet: SheetInHand;
}

/** The sheet in a few numbers, and the one button. */
export function Glance({ preview, sheet }: GlanceProps) {
  const { t } = useTranslation("sheets");
  const trpc = useTRPC();
  const { counts, kind } = preview;
  const take = useMutation(
    trpc.intake.take.mutationOptions({
      onSuccess(taken) {
        sheet.isTaken(taken);
        const count = changesOf(taken.counts);
        tell({ tone: "done", sentence: { key: "sheets:done.told", values: { count } } });
      },
    }),
  );
  const changes = changesOf(counts);

  function takeIn(): void {
    if (sheet.uploadId !== null) take.mutate({ uploadId: sheet.uploadId, kind, mapping: sheet.mapping });
  }
  return (
    <div className={css.glance}>
      <div className={css.numbers}>
        <BigNumber label={t("count.new")} number={counts.new} />
        {kind === "roster" && <BigNumber label={t("count.changed")} number={counts.changed} />}
        <BigNumber label={t("count.known")} number={counts.known} />
        {counts.unusual > 0 && <BigNumber label={t("count.unusual")} number={counts.unusual} />}
        <BigNumber
          label={t("count.keptBack")}
          number={counts.keptBack}
          tone={counts.keptBack > 0 ? "alert" : "plain"}
        />
      </div>
      {changes > 0 ? (
        <Button kind="primary" size="large" busy={take.isPending} onPress={takeIn}>
          {t("take.button", { count: changes })}
        </Button>
      ) : (
        <p className={css.nothing}>{counts.known > 0 ? t("take.already") : t("take.nothing")}</p>
      )}
      {kind === "roster" && counts.joined > counts.new && (
        <p className={css.joined}>{t("take.joined", { count: counts.joined - counts.new })}</p>
      )}
    </div>
  );
}

/** Rows that change something, those among them that only come onto the day's list. */
export function changesOf(counts: Counts): number {
  return Math.max(counts.new + counts.changed, counts.joined);
}
