import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { Button } from "../../../parts/controls/Button.tsx";
import { Section } from "../../../parts/layout/Panel.tsx";
import { JoinDialog } from "../join/JoinDialog.tsx";
import { EraseDialog } from "./EraseDialog.tsx";
import css from "./Held.module.css";
import { HeldPapers } from "./HeldPapers.tsx";
import { Matter } from "./Matter.tsx";
import { MendDialog } from "./MendDialog.tsx";
import { RemoveDialog } from "./RemoveDialog.tsx";
import type { HeldAthlete } from "./types.ts";

type Open = "mend" | "join" | "remove" | "erase" | null;

/** Offers what an athlete may ask of the organiser: to correct their data, to see all of it, to be erased. */
export function HeldSection({ athlete }: { readonly athlete: HeldAthlete }) {
  const { t } = useTranslation(["held", "steps"]);
  const trpc = useTRPC();
  const { athleteId } = athlete;
  const before = useQuery(trpc.people.beforeErasing.queryOptions({ athleteId }));
  const [open, setOpen] = useState<Open>(null);
  const close = () => setOpen(null);
  return (
    <Section title={t("title")}>
      <div className={css.matters}>
        <Matter title={t("mend.title")} what={t("mend.what")}>
          <Button onPress={() => setOpen("mend")}>{t("mend.do")}</Button>
          {before.data?.removable === true && (
            <Button kind="danger" onPress={() => setOpen("remove")}>
              {t("remove.do")}
            </Button>
          )}
        </Matter>
        <Matter title={t("steps:join.open")} what={t("steps:join.what")}>
          <Button onPress={() => setOpen("join")}>{t("steps:join.do")}</Button>
        </Matter>
        {before.data !== undefined && <HeldPapers athleteId={athleteId} before={before.data} />}
        <Matter title={t("erase.title")} what={t("erase.what")}>
          <Button kind="danger" disabled={before.data === undefined} onPress={() => setOpen("erase")}>
            {t("erase.do")}
          </Button>
        </Matter>
      </div>
      {open === "mend" && <MendDialog athlete={athlete} onClose={close} />}
      {open === "join" && <JoinDialog athlete={athlete} onClose={close} />}
      {open === "remove" && <RemoveDialog athlete={athlete} onClose={close} />}
      {open === "erase" && before.data !== undefined && (
        <EraseDialog athlete={athlete} before={before.data} onClose={close} />
      )}
    </Section>
  );
}
