import { useTranslation } from "react-i18next";
import { useTRPCClient } from "../../app/client.tsx";
import { saveMade, textFile } from "../../app/saving.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { LineList } from "../../parts/sheets/LineList.tsx";
import { asSentence, type KeptBackRow } from "../../parts/sheets/sheet.ts";
import { useFieldName } from "../../parts/sheets/useFieldName.ts";
import { useSay } from "../../words/say.ts";
import { PutRight } from "./PutRight.tsx";
import type { SheetInHand } from "./useSheet.ts";

interface KeptBackProps {
  /** The first of them. */
  readonly rows: readonly KeptBackRow[];
  /** All of them. */
  readonly count: number;
  /** What of the others: they go in, they are in, or there are none. */
  readonly others: "goIn" | "areIn" | "none";
  readonly sheet: SheetInHand;
  /** Of the sheet, where its rows can still be put right; left out once it is imported. */
  readonly headers?: readonly string[];
}

/** The rows that stay outside, each with its line, why, and what stands there; they can be saved to be put right. */
export function KeptBack({ rows, count, others, sheet, headers }: KeptBackProps) {
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
  const lines = rows.map((row) => ({
    line: row.line,
    says: (
      <Stack gap={1}>
        {[row, ...row.also].map(({ field, reason }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: reasons have no names, and never change places
          <span key={index}>
            {field !== null && <strong>{fieldName(field)}: </strong>}
            {say(asSentence(reason))}
          </span>
        ))}
        {headers !== undefined && <PutRight row={row} headers={headers} sheet={sheet} />}
      </Stack>
    ),
    stands: row.cells.filter((cell) => cell.trim() !== "").join(" · "),
  }));
  const more = rows.length < count ? t("keptBack.first", { shown: rows.length, count }) : undefined;
  const title = t("keptBack.title", { count });
  return (
    <LineList title={title} lead={t(`keptBack.others.${others}`)} lines={lines} aside={save} more={more} />
  );
}
