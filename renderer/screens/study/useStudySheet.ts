import { useRef, useState } from "react";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPCClient } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import {
  type ColumnMapping,
  isOtherSheet,
  mapped,
  type SaidOfAll,
  tooBig,
  unreadable,
  whyUnread,
} from "../../parts/sheets/sheet.ts";
import type { Looked } from "./types.ts";

/** An uploaded sheet with what a person says of it; it is looked at again at every change. */
export interface StudySheet {
  readonly file: string;
  readonly uploadId: string;
  readonly mapping: ColumnMapping;
  readonly said: SaidOfAll;
}

/** The state of the one sheet in hand; nothing is kept before it is imported. */
type Standing =
  | { readonly step: "none" }
  | { readonly step: "bringing"; readonly file: string }
  | { readonly step: "refused"; readonly file: string; readonly sentence: Sentence }
  | { readonly step: "looked"; readonly sheet: StudySheet; readonly looked: Looked };

/** Holds the sheet that is being looked at for one series of a study. */
export function useStudySheet(studyId: string, position: number) {
  const client = useTRPCClient();
  const [standing, setStanding] = useState<Standing>({ step: "none" });
  // Of several looks the one that was asked for last counts.
  const looks = useRef(0);

  function refuseWith(file: string, sentence: Sentence): void {
    setStanding({ step: "refused", file, sentence });
  }
  function look(sheet: StudySheet, recall: boolean): void {
    looks.current += 1;
    const own = looks.current;
    const { file, uploadId, mapping, said } = sheet;
    client.study.lookAt.query({ ...said, uploadId, mapping, studyId, position, recall }).then(
      (looked) => {
        if (own !== looks.current) return;
        // A recalled mapping counts as the person's own from now on.
        setStanding({ step: "looked", sheet: { ...sheet, mapping: looked.form.mapping }, looked });
      },
      (error: unknown) => own === looks.current && refuseWith(file, sentenceOf(error)),
    );
  }
  function bring(file: string, content: Blob): void {
    tell(null);
    const why = whyUnread(content);
    if (why !== null) {
      refuseWith(file, why);
      return;
    }
    setStanding({ step: "bringing", file });
    client.intake.upload.mutate(content).then(
      ({ uploadId }) => look({ file, uploadId, mapping: {}, said: {} }, true),
      (error: unknown) => refuseWith(file, sentenceOf(error)),
    );
  }
  return {
    standing,
    bring,
    refuse: (file: string, why: "too-big" | "unreadable") =>
      refuseWith(file, why === "too-big" ? tooBig : unreadable),
    map(sheet: StudySheet, field: string, header: string): void {
      look({ ...sheet, mapping: mapped(sheet.mapping, field, header) }, false);
    },
    say(sheet: StudySheet, more: SaidOfAll): void {
      const said = { ...sheet.said, ...more };
      if (isOtherSheet(more)) look({ ...sheet, said, mapping: {} }, true);
      else look({ ...sheet, said }, false);
    },
    putAway(): void {
      looks.current += 1;
      setStanding({ step: "none" });
    },
  };
}
