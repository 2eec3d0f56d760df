import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { LeagueDialog } from "./join/LeagueDialog.tsx";

/** Renames the league that the list shows, or merges it with another; nothing while it shows all. */
export function LeagueChange({
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
