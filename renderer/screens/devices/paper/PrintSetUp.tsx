import { useTranslation } from "react-i18next";
import { useDaySheets } from "../../../app/daySheets.ts";
import { usePaperTitle, useReady, useType } from "../../../app/ready.ts";
import { type Paper, paperNamed } from "../../../app/saving.ts";
import { useNetwork } from "../view.ts";
import { SetUpSheet } from "./SetUpSheet.tsx";

/** The set-up sheet alone, as it is printed. An address that names no paper shows nothing, and never gets ready. */
export function PrintSetUp({ paper }: { readonly paper: string }) {
  const size = paperNamed(paper);
  return size !== undefined && <Page paper={size} />;
}

function Page({ paper }: { readonly paper: Paper }) {
  const { t } = useTranslation("devices");
  const { day } = useDaySheets();
  const { data } = useNetwork();
  const isHere = day !== null && data !== undefined;
  const type = useType(isHere);
  usePaperTitle(day === null ? null : `${t("paper.title")}, ${day.title}`);
  useReady(isHere && type);
  return (
    isHere && (
      <main>
        <SetUpSheet paper={paper} day={day} on={data.on} />
      </main>
    )
  );
}
