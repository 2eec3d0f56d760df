import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../../parts/Button.tsx";
import { Choice } from "../../../parts/Choice.tsx";
import { Matter } from "./Matter.tsx";
import type { Before } from "./types.ts";
import { useAmounts } from "./useAmounts.ts";
import { useHeldPapers } from "./useHeldPapers.ts";

/** Everything held about an athlete, to be handed to them on paper or as a file. */
export function HeldPapers({ athleteId, before }: { readonly athleteId: number; readonly before: Before }) {
  const { t } = useTranslation("held");
  const [paper, setPaper] = useState<"a4" | "letter">("a4");
  const { busy, saveFile, savePdf, print } = useHeldPapers(athleteId, paper);
  return (
    <Matter title={t("held.title")} what={t("held.what", useAmounts(before))}>
      <Choice
        label={t("held.paper")}
        hideLabel
        options={[
          { value: "a4", label: t("held.a4") },
          { value: "letter", label: t("held.letter") },
        ]}
        value={paper}
        onChange={setPaper}
      />
      <Button busy={busy} onPress={savePdf}>
        {t("held.pdf")}
      </Button>
      <Button busy={busy} onPress={print}>
        {t("held.print")}
      </Button>
      <Button busy={busy} onPress={saveFile}>
        {t("held.file")}
      </Button>
    </Matter>
  );
}
