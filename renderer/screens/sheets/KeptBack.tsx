import { useTranslation } from "react-i18next";
import { useTRPCClient } from "../../app/client.tsx";
import { saveMade, textFile } from "../../app/saving.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { LineList } from "../../parts/sheets/LineList.tsx";
import { asSentence, type KeptBackRow } from "../../parts/sheets/sheet.ts";
import { useFieldName } from "../../parts/sheets/useFieldName.ts";
import { useSay } from "../../words/say.ts";
import type { SheetInHand } from "./useSheet.ts";

interface KeptBackProps {
  /** The first of them. */
  readonly rows: readonly KeptBackRow[];
  /** All of them. */
  readonly count: number;
  /** What of the others: they go in, they are in, or there are none. */
  readonly others: "goIn" | "areIn" | "none";
  readonly sheet: SheetInHand;
}

/** The rows that stay outside, each with its line, why, and what stands there; they can be saved to be put right. */
export function KeptBack({ rows, count, others, sheet }: KeptBackProps) {
  const { t } = useTranslation("sheets");
  const fieldName = useFieldName();
  const say = useSay();
  const client = useTRPCClient();
  const { uploadId } = sheet;
  const save = uploadId !== null && (
    <Button
      onPress={() =>
        void saveMade("sheets", () => client.intake.keptBackSheet.query({ uploadId }).then(textFile))
      }
    >
      {t("keptBack.save")}
    </Button>
  );
  const lines = rows.map(({ line, field, reason, cells }) => ({
    line,
    says: (
      <>
        {field !== null && <strong>{fieldName(field)}: </strong>}
        {say(asSentence(reason))}
      </>
    ),
    stands: cells.filter((cell) => cell.trim() !== "").join(" · "),
  }));
  const more = rows.length < count ? t("keptBack.first", { shown: rows.length, count }) : undefined;
  const title = t("keptBack.title", { count });
  return (
    <LineList title={title} lead={t(`keptBack.others.${others}`)} lines={lines} aside={save} more={more} />
  );
}
