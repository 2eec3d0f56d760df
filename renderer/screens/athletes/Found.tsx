import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import css from "./Athletes.module.css";
import { LeagueDialog } from "./join/LeagueDialog.tsx";

interface FoundProps {
  /** Number of athletes that the filter leaves. */
  readonly count: number;
  /** The league that alone is shown; undefined: all. */
  readonly league: { readonly id: number; readonly name: string } | undefined;
  /** True after the chosen league is no longer there. */
  readonly isLost: boolean;
}

/** Says over the list how many it holds, and offers what can be done with the chosen league. */
export function Found({ count, league, isLost }: FoundProps) {
  const { t } = useTranslation("athletes");
  return (
    <Row gap={4} align="center" between wrap className={css.found}>
      <p role="status">
        {isLost && <strong>{t("leagueLost")} </strong>}
        {t("count", { count })}
      </p>
      <LeagueChange key={league?.id} league={league} />
    </Row>
  );
}

/** Renames the league that the list shows, or merges it with another; nothing while it shows all. */
function LeagueChange({
  league,
}: {
  readonly league: { readonly id: number; readonly name: string } | undefined;
}) {
  const { t } = useTranslation("steps");
  const [open, setOpen] = useState(false);
  if (league === undefined) return null;
  return (
    <>
      <Button onPress={() => setOpen(true)}>{t("league.do")}</Button>
      {open && <LeagueDialog league={league} onClose={() => setOpen(false)} />}
    </>
  );
}
