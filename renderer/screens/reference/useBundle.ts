import { useCallback, useState } from "react";
import { tableLimits } from "../../../electron/domain/reference-table/table.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPCClient } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import type { Brought } from "./types.ts";

/** The state of the one file being looked at; nothing is kept before it is added. */
type Standing =
  | { readonly step: "none" }
  | { readonly step: "bringing"; readonly name: string }
  | { readonly step: "refused"; readonly name: string; readonly sentence: Sentence }
  | { readonly step: "brought"; readonly name: string; readonly brought: Brought };

export interface BundleInHand {
  readonly standing: Standing;
  bring(name: string, content: Blob): void;
  /** Shows the shell's refusal of a file that was not read. */
  refuse(name: string, sentence: Sentence): void;
  putAway(): void;
}

const megabytes = tableLimits.bytes / 1024 / 1024;
export const tooBig: Sentence = { key: "reference.tooBig", values: { megabytes } };

export function useBundle(): BundleInHand {
  const client = useTRPCClient();
  const [standing, setStanding] = useState<Standing>({ step: "none" });
  const refuse = useCallback((name: string, sentence: Sentence) => {
    setStanding({ step: "refused", name, sentence });
  }, []);

  function bring(name: string, content: Blob): void {
    tell(null);
    const { size } = content;
    // An empty body would not reach the desk.
    if (size === 0 || size > tableLimits.bytes) {
      refuse(name, size === 0 ? { key: "reference.notZip" } : tooBig);
      return;
    }
    setStanding({ step: "bringing", name });
    client.reference.bring.mutate(content).then(
      (brought) => setStanding({ step: "brought", name, brought }),
      (error: unknown) => refuse(name, sentenceOf(error)),
    );
  }

  return { standing, bring, refuse, putAway: () => setStanding({ step: "none" }) };
}
