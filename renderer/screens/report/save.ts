import { strToU8, zipSync } from "fflate";
import type { ReportFile } from "../../../electron/shell/bridge-types.ts";
import { bridge } from "../../app/bridge.ts";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";

/** Saves the files that were read as one zip; what came of it stands in the message strip. */
export async function saveReport(files: readonly ReportFile[]): Promise<void> {
  if (bridge === null) return tell({ tone: "alert", sentence: { key: "report:noBridge" } });
  try {
    const bytes = zipSync(Object.fromEntries(files.map(({ name, text }) => [name, strToU8(text)])));
    const outcome = await bridge.saveFile({ suggestedName: `tapeline-report-${today()}.zip`, bytes });
    if (outcome.saved) {
      return tell({ tone: "done", sentence: { key: "report:saved", values: { name: outcome.name } } });
    }
    const tone = outcome.why === "cancelled" ? "note" : "alert";
    tell({ tone, sentence: { key: `report:${outcome.why}` } });
  } catch (error) {
    tell({ tone: "alert", sentence: sentenceOf(error) });
  }
}

/** The date in the hall, as a sorted list of files wants it. */
function today(): string {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
