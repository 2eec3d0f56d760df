import { useTranslation } from "react-i18next";
import { EmptyState } from "../../parts/EmptyState.tsx";
import { Section } from "../../parts/Panel.tsx";
import { Glance } from "./Glance.tsx";
import { KeptBack } from "./KeptBack.tsx";
import { Mapping } from "./Mapping.tsx";
import type { Preview } from "./sheet.ts";
import { TakenRows } from "./TakenRows.tsx";
import { Unusual } from "./Unusual.tsx";
import type { SheetInHand } from "./useSheet.ts";

interface LookProps {
  readonly preview: Preview;
  readonly sheet: SheetInHand;
}

/** What a sheet would change: the counts, what needs a look, and the first rows. */
export function Look({ preview, sheet }: LookProps) {
  const { t } = useTranslation("sheets");
  if (preview.missing.length > 0) return <Mapping preview={preview} sheet={sheet} />;
  const { counts } = preview;
  const taken = counts.new + counts.changed + counts.known;
  return (
    <>
      <Glance preview={preview} sheet={sheet} />
      {preview.unknown.length > 0 && <Mapping preview={preview} sheet={sheet} />}
      {counts.keptBack > 0 && <KeptBack rows={preview.keptBack} count={counts.keptBack} sheet={sheet} />}
      {counts.unusual > 0 && <Unusual rows={preview.rows} count={counts.unusual} />}
      <Section title={t("rows.title")} aside={<Shown shown={preview.rows.length} of={taken} />}>
        {taken === 0 ? <EmptyState title={t("rows.none")} /> : <TakenRows preview={preview} />}
      </Section>
    </>
  );
}

function Shown({ shown, of }: { readonly shown: number; readonly of: number }) {
  const { t } = useTranslation("sheets");
  return shown < of ? <p>{t("rows.first", { shown, of })}</p> : null;
}
