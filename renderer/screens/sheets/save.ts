import { bridge } from "../../app/bridge.ts";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";

/** Saves a sheet that the desk wrote where the person says; what came of it stands in the message strip. */
export async function saveText(
  asked: Promise<{ readonly name: string; readonly text: string }>,
): Promise<void> {
  if (bridge === null) return tell({ tone: "alert", sentence: { key: "sheets:save.noBridge" } });
  try {
    const { name, text } = await asked;
    const outcome = await bridge.saveFile({ suggestedName: name, bytes: new TextEncoder().encode(text) });
    if (outcome.saved) {
      return tell({ tone: "done", sentence: { key: "sheets:save.saved", values: { name: outcome.name } } });
    }
    const tone = outcome.why === "cancelled" ? "note" : "alert";
    tell({ tone, sentence: { key: `sheets:save.${outcome.why}` } });
  } catch (error) {
    tell({ tone: "alert", sentence: sentenceOf(error) });
  }
}
