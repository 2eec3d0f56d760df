import { useState } from "react";
import { useTranslation } from "react-i18next";
import { localeOf } from "../../../../electron/domain/languages.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { useWhen } from "../given/useWhen.ts";
import type { Planned, WhatIf } from "../types.ts";
import { LeagueTimesDialog } from "./LeagueTimesDialog.tsx";
import { isEarlier, minutesOf } from "./worth.ts";

interface LeagueTimesProps {
  readonly whatIf: WhatIf;
  readonly planned: Planned;
}

/** Says when each league would come and, where that is the only change, what it does to waits, with the key that takes the times over. */
export function LeagueTimes({ whatIf, planned }: LeagueTimesProps) {
  const { t, i18n } = useTranslation("plan");
  const when = useWhen();
  const [asking, setAsking] = useState(false);
  if (whatIf.waves === undefined) return null;
  const { times } = whatIf.waves;
  const list = new Intl.ListFormat(localeOf(i18n.language), { type: "unit", style: "short" });
  const named = times.map(({ league, ...time }) => t("gains.leagueTime", { league, when: when(time) }));
  return (
    <Stack gap={1}>
      {whatIf.changes.length === 1 && <WhatChanges whatIf={whatIf} />}
      <p>{t("gains.coming", { times: list.format(named) })}</p>
      {whatIf.changes.length === 1 && (
        <div>
          <Button onPress={() => setAsking(true)}>{t("gains.use")}</Button>
        </div>
      )}
      {asking && <LeagueTimesDialog planned={planned} times={times} onClose={() => setAsking(false)} />}
    </Stack>
  );
}

function WhatChanges({ whatIf }: Pick<LeagueTimesProps, "whatIf">) {
  const { t } = useTranslation("plan");
  const end = isEarlier(whatIf)
    ? t("gains.dayEarlier", { count: minutesOf(whatIf.saved.middle) })
    : t("gains.noLater");
  const [count, before] = [whatIf.waves?.wait, whatIf.waves?.waitAsGiven].map((wait) => minutesOf(wait ?? 0));
  if (count === undefined || before === undefined || count === before) return <p>{end}</p>;
  const waits =
    count < before ? t("gains.waitsFall", { before, count }) : t("gains.waitsRise", { before, count });
  return (
    <p>
      {end} {waits}
    </p>
  );
}
