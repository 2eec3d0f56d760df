import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { PrintOutcome, SaveOutcome } from "../../../../electron/shell/bridge-types.ts";
import { bridge } from "../../../app/bridge.ts";
import { useTRPCClient } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { sentenceOf } from "../../../app/trouble.ts";

/** The ways out of all that is held about an athlete; what came of one stands in the message strip. */
export function useHeldPapers(athleteId: number, paper: "a4" | "letter") {
  const { t } = useTranslation("held");
  const client = useTRPCClient();
  const [busy, setBusy] = useState(false);
  const page = { path: `/print/held/${athleteId}`, paper };

  async function run(work: (open: NonNullable<typeof bridge>) => Promise<void>): Promise<void> {
    if (bridge === null) return tell({ tone: "alert", sentence: { key: "held:held.noBridge" } });
    setBusy(true);
    try {
      await work(bridge);
    } catch (error) {
      tell({ tone: "alert", sentence: sentenceOf(error) });
    } finally {
      setBusy(false);
    }
  }
  /** The file's name says nobody's: systems remember names of files. */
  function nameOf(kind: "json" | "pdf"): string {
    return t("held.name", { date: new Date().toLocaleDateString("sv-SE"), kind });
  }
  return {
    busy,
    saveFile: () =>
      void run(async (open) => {
        const held = await client.people.held.query({ athleteId });
        const bytes = new TextEncoder().encode(`${JSON.stringify(held, null, 2)}\n`);
        tellSaved(await open.saveFile({ suggestedName: nameOf("json"), bytes }));
      }),
    savePdf: () =>
      void run(async (open) => tellSaved(await open.savePdf({ ...page, suggestedName: nameOf("pdf") }))),
    print: () => void run(async (open) => tellPrinted(await open.print(page))),
  };
}

function tellSaved(outcome: SaveOutcome): void {
  if (outcome.saved) {
    tell({ tone: "done", sentence: { key: "held:held.saved", values: { name: outcome.name } } });
  } else tellNot(outcome.why);
}

function tellPrinted(outcome: PrintOutcome): void {
  if (outcome.printed) tell({ tone: "done", sentence: { key: "held:held.printed" } });
  else tellNot(outcome.why);
}

function tellNot(why: "cancelled" | "no-space" | "not-allowed" | "failed"): void {
  tell({ tone: why === "cancelled" ? "note" : "alert", sentence: { key: `held:held.${why}` } });
}
