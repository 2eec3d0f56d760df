import { useState } from "react";
import type { PageToSave } from "../../electron/shell/bridge-types.ts";
import { bridge } from "./bridge.ts";
import { tell } from "./messages.ts";

/**
 * Printing a page and saving it as a PDF; what came of it stands in the message strip, in the words of `screen`: its
 * file has the keys `noBridge`, `print.*` and `save.*`.
 */
export function usePaperwork(screen: "instructions" | "summary", page: PageToSave) {
  const [busy, setBusy] = useState(false);

  async function run(work: () => Promise<void>): Promise<void> {
    setBusy(true);
    try {
      await work();
    } finally {
      setBusy(false);
    }
  }
  async function print(): Promise<void> {
    const { path, paper } = page;
    const outcome = await bridge?.print({ path, paper });
    if (outcome === undefined) return tell({ tone: "alert", sentence: { key: `${screen}:noBridge` } });
    if (outcome.printed) return tell({ tone: "done", sentence: { key: `${screen}:print.done` } });
    const tone = outcome.why === "cancelled" ? "note" : "alert";
    tell({ tone, sentence: { key: `${screen}:print.${outcome.why}` } });
  }
  async function save(): Promise<void> {
    const outcome = await bridge?.savePdf(page);
    if (outcome === undefined) return tell({ tone: "alert", sentence: { key: `${screen}:noBridge` } });
    if (outcome.saved) {
      const values = { name: outcome.name };
      return tell({ tone: "done", sentence: { key: `${screen}:save.saved`, values } });
    }
    const tone = outcome.why === "cancelled" ? "note" : "alert";
    tell({ tone, sentence: { key: `${screen}:save.${outcome.why}` } });
  }
  return { busy, print: () => void run(print), save: () => void run(save) };
}
