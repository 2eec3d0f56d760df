import { bridge } from "../../app/bridge.ts";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";

type Made = { readonly name: string } & ({ readonly text: string } | { readonly bytes: string });

function bytesOf(made: Made): Uint8Array {
  if ("text" in made) return new TextEncoder().encode(made.text);
  return Uint8Array.from(atob(made.bytes), (letter) => letter.charCodeAt(0));
}

/** Saves a file that the desk makes where the person says; what came of it stands in the message strip. */
export async function saveFile(make: () => Promise<Made>): Promise<void> {
  if (bridge === null) return tell({ tone: "alert", sentence: { key: "summary:noBridge" } });
  try {
    const made = await make();
    const outcome = await bridge.saveFile({ suggestedName: made.name, bytes: bytesOf(made) });
    if (outcome.saved) {
      return tell({ tone: "done", sentence: { key: "summary:save.saved", values: { name: outcome.name } } });
    }
    const tone = outcome.why === "cancelled" ? "note" : "alert";
    tell({ tone, sentence: { key: `summary:save.${outcome.why}` } });
  } catch (error) {
    tell({ tone: "alert", sentence: sentenceOf(error) });
  }
}
