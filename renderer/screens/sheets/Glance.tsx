import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { changesOf, type Preview } from "../../parts/sheets/sheet.ts";
import { writeNumber } from "../../words/numbers.ts";
import css from "./Sheets.module.css";
import type { SheetInHand } from "./useSheet.ts";

/** Shows the sheet in a few numbers, with the import button. */
export function Glance({ preview, sheet }: { readonly preview: Preview; readonly sheet: SheetInHand }) {
  const { t, i18n } = useTranslation("sheets");
  const trpc = useTRPC();
  const { counts, kind } = preview;
  const take = useMutation(
    trpc.intake.take.mutationOptions({
      onSuccess(taken) {
        sheet.isTaken(taken);
        const count = changesOf(taken.counts);
        tell({
          tone: "done",
          sentence: {
            key: "sheets:done.told",
            values: { count, shown: writeNumber(count, i18n.language) },
          },
        });
      },
    }),
  );
  const changes = changesOf(counts);
  const shown = (["new", "changed", "known", "unusual", "keptBack"] as const).filter(
    (name) => counts[name] > 0 || name === "new" || name === "keptBack",
  );

  function takeIn(): void {
    if (sheet.asked !== null) take.mutate({ ...sheet.asked, kind, fileName: sheet.name ?? "" });
  }
  return (
    <Row gap={6} lines={4} align="end" wrap between>
      <Row gap={7} lines={4} wrap role="status">
        {shown.map((name) => (
          <BigNumber
            key={name}
            label={t(`count.${name}`)}
            number={writeNumber(counts[name], i18n.language)}
            tone={name === "keptBack" && counts.keptBack > 0 ? "alert" : "plain"}
          />
        ))}
      </Row>
      {preview.questionCount > 0 ? (
        <Button size="large" disabled>
          {t("take.waits", { count: preview.questionCount })}
        </Button>
      ) : changes > 0 ? (
        <Button kind="primary" size="large" busy={take.isPending} onPress={takeIn}>
          {t("take.button", { count: changes, shown: writeNumber(changes, i18n.language) })}
        </Button>
      ) : (
        <p className={`lead strong ${css.nothing}`}>
          {counts.known > 0 ? t("take.already") : t("take.nothing")}
        </p>
      )}
      {kind === "roster" && counts.joined > counts.new && (
        <p className={css.joined}>{t("take.joined", { count: counts.joined - counts.new })}</p>
      )}
    </Row>
  );
}
