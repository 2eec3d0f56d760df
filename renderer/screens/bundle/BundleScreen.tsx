import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { Answer } from "../../parts/Answer.tsx";
import { LinkButton } from "../../parts/Button.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { BundleSteps } from "./BundleSteps.tsx";
import { DayChoice } from "./DayChoice.tsx";
import { ExportLog } from "./ExportLog.tsx";
import { NoDay } from "./NothingToShare.tsx";
import type { Wish } from "./preview.ts";
import { WishChoice } from "./WishChoice.tsx";

/** What could be found out, what was done about it, what would leave and what stays; then the file. */
export function BundleScreen() {
  const { t } = useTranslation(["bundle", "reference"]);
  const trpc = useTRPC();
  const [dayId, setDayId] = useState<number | null>(null);
  const [wish, setWish] = useState<Wish>({ kind: "marks", k: 5 });
  const preview = useQuery({
    ...trpc.bundle.preview.queryOptions(dayId === null ? wish : { ...wish, dayId }),
    placeholderData: keepPreviousData,
  });
  const log = useQuery(trpc.bundle.log.queryOptions());
  const shown = preview.data?.day.id ?? null;

  return (
    <Screen
      title={t("title")}
      lead={t("lead")}
      actions={
        <>
          <LinkButton to="/reference">{t("reference:link")}</LinkButton>
          {shown !== null && <DayChoice chosen={shown} onChoose={setDayId} />}
        </>
      }
      ready={preview.isFetched}
    >
      <Answer query={preview}>
        {(bundle) =>
          bundle === null ? (
            <NoDay />
          ) : (
            <>
              <WishChoice wish={wish} onChange={setWish} />
              <BundleSteps
                key={`${bundle.day.id} ${bundle.kind} ${bundle.k}`}
                bundle={bundle}
                isOld={preview.isPlaceholderData}
              />
            </>
          )
        }
      </Answer>
      <Answer query={log}>{(entries) => <ExportLog entries={entries} />}</Answer>
    </Screen>
  );
}
