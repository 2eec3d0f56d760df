import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPCClient } from "../../../app/client.tsx";
import { saveMade, textFile, usePaperwork } from "../../../app/saving.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Choice } from "../../../parts/controls/Choice.tsx";
import { dateHere } from "../../../words/dates.ts";
import { Matter } from "./Matter.tsx";
import type { Before } from "./types.ts";
import { useAmounts } from "./useAmounts.ts";

/** Prints or saves everything held about an athlete, to be handed to them. */
export function HeldPapers({ athleteId, before }: { readonly athleteId: number; readonly before: Before }) {
  const { t } = useTranslation("held");
  const [paper, setPaper] = useState<"a4" | "letter">("a4");
  const client = useTRPCClient();
  // The file's name has no name of anybody: systems remember the names of files.
  const nameOf = (kind: "json" | "pdf") => t("held.name", { date: dateHere(), kind });
  const page = { path: `/print/held/${athleteId}`, paper, suggestedName: nameOf("pdf") };
  const { busy, run, print, save } = usePaperwork("held", page);

  async function makeFile() {
    const held = await client.people.held.query({ athleteId });
    return textFile({ name: nameOf("json"), text: `${JSON.stringify(held, null, 2)}\n` });
  }
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
      <Button busy={busy} onPress={save}>
        {t("held.pdf")}
      </Button>
      <Button busy={busy} onPress={print}>
        {t("held.print")}
      </Button>
      <Button busy={busy} onPress={() => run(() => saveMade("held", makeFile))}>
        {t("held.file")}
      </Button>
    </Matter>
  );
}
