import { useTranslation } from "react-i18next";
import { Section } from "../../parts/layout/Panel.tsx";
import { Choices } from "../../parts/sheets/Choices.tsx";
import type { Preview } from "../../parts/sheets/sheet.ts";
import { writeNumber } from "../../words/numbers.ts";
import { Glance } from "./Glance.tsx";
import { KeptBack } from "./KeptBack.tsx";
import { LeftOut } from "./LeftOut.tsx";
import { Mapping } from "./Mapping.tsx";
import { TakenRows } from "./TakenRows.tsx";
import { Changes, Unusual } from "./Unusual.tsx";
import type { SheetInHand } from "./useSheet.ts";
import { WhoIsWho } from "./WhoIsWho.tsx";

interface LookProps {
  readonly preview: Preview;
  readonly sheet: SheetInHand;
}

/** Shows what a sheet would change: the counts, the rows that need a look, and the first rows. */
export function Look({ preview, sheet }: LookProps) {
  const canRead = preview.missing.length === 0;
  const isMapped =
    preview.missing.some((field) => field !== "date_order") ||
    preview.unknown.length > 0 ||
    Object.keys(sheet.mapping).length > 0;
  return (
    <>
      {canRead && <Glance preview={preview} sheet={sheet} />}
      {canRead && <WhoIsWho preview={preview} sheet={sheet} />}
      <Choices key="choices" form={preview} said={sheet.said} onSay={sheet.say} />
      {/* One place for it, so that a column chosen by keyboard keeps the focus while the sheet is read anew. */}
      {isMapped && <Mapping key="mapping" preview={preview} sheet={sheet} />}
      {canRead && <Rows preview={preview} sheet={sheet} />}
    </>
  );
}

function Rows({ preview, sheet }: LookProps) {
  const { t, i18n } = useTranslation("sheets");
  const { counts, rows } = preview;
  const taken = counts.new + counts.changed + counts.known;
  const of = writeNumber(taken, i18n.language);
  return (
    <>
      {counts.keptBack > 0 && (
        <KeptBack
          rows={preview.keptBack}
          count={counts.keptBack}
          others={taken > 0 ? "goIn" : "none"}
          sheet={sheet}
          form={preview}
        />
      )}
      {preview.leftOut.length > 0 && <LeftOut rows={preview.leftOut} sheet={sheet} />}
      {counts.unusual > 0 && <Unusual rows={rows} count={counts.unusual} />}
      {counts.changed > 0 && <Changes rows={rows} count={counts.changed} />}
      {taken > 0 && (
        <Section
          title={t("rows.title")}
          aside={rows.length < taken && <p>{t("rows.first", { shown: rows.length, of })}</p>}
        >
          <TakenRows preview={preview} sheet={sheet} />
        </Section>
      )}
    </>
  );
}
