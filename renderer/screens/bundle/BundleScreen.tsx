import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { Answer } from "../../parts/Answer.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { Erasures } from "../athletes/held/Erasures.tsx";
import { BundleSteps } from "./BundleSteps.tsx";
import { DayChoice } from "./DayChoice.tsx";
import { ExportLog } from "./ExportLog.tsx";
import { NoDay } from "./NothingToShare.tsx";

/** What would leave the room, what stays and why, then the file; and what has left so far. */
export function BundleScreen() {
  const { t } = useTranslation("bundle");
  const trpc = useTRPC();
  const [dayId, setDayId] = useState<number | null>(null);
  const preview = useQuery({
    ...trpc.bundle.preview.queryOptions(dayId === null ? {} : { dayId }),
    placeholderData: keepPreviousData,
  });
  const log = useQuery(trpc.bundle.log.queryOptions());
  const shown = preview.data?.day.id ?? null;

  return (
    <Screen
      title={t("title")}
      lead={t("lead")}
      actions={shown !== null && <DayChoice chosen={shown} onChoose={setDayId} />}
      ready={preview.isFetched}
    >
      <Answer query={preview}>
        {(bundle) =>
          bundle === null ? (
            <NoDay />
          ) : (
            <BundleSteps key={bundle.day.id} bundle={bundle} log={log.data ?? []} />
          )
        }
      </Answer>
      <Answer query={log}>{(entries) => <ExportLog entries={entries} />}</Answer>
      <Erasures />
    </Screen>
  );
}
