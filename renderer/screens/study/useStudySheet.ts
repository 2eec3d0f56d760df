import { useState } from "react";
import { sheetLimits } from "../../../electron/domain/sheets/limits.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPCClient } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import type { Looked } from "./types.ts";

/** The state of the one sheet in hand; nothing is kept before it is imported. */
type Standing =
  | { readonly step: "none" }
  | { readonly step: "bringing"; readonly file: string }
  | { readonly step: "refused"; readonly file: string; readonly sentence: Sentence }
  | { readonly step: "looked"; readonly file: string; readonly uploadId: string; readonly looked: Looked };

const megabytes = sheetLimits.bytes / 1024 / 1024;
const tooBig: Sentence = { key: "sheets.tooBig", values: { megabytes } };

/** Holds the sheet that is being looked at for one series of a study. */
export function useStudySheet(studyId: string, position: number) {
  const client = useTRPCClient();
  const [standing, setStanding] = useState<Standing>({ step: "none" });

  function refuseWith(file: string, sentence: Sentence): void {
    setStanding({ step: "refused", file, sentence });
  }
  async function read(content: Blob): Promise<{ uploadId: string; looked: Looked }> {
    const { uploadId } = await client.intake.upload.mutate(content);
    return { uploadId, looked: await client.study.lookAt.query({ uploadId, studyId, position }) };
  }
  function bring(file: string, content: Blob): void {
    tell(null);
    // An empty body would not reach the desk.
    if (content.size === 0 || content.size > sheetLimits.bytes) {
      refuseWith(file, content.size === 0 ? { key: "sheets.empty" } : tooBig);
      return;
    }
    setStanding({ step: "bringing", file });
    read(content).then(
      (answer) => setStanding({ step: "looked", file, ...answer }),
      (error: unknown) => refuseWith(file, sentenceOf(error)),
    );
  }
  return {
    standing,
    bring,
    refuse: (file: string, why: "too-big" | "unreadable") =>
      refuseWith(file, why === "too-big" ? tooBig : { key: "sheets:choose.unreadable" }),
    putAway: () => setStanding({ step: "none" }),
  };
}
