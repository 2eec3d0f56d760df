import { useQuery } from "@tanstack/react-query";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../../electron/domain/tests/reading.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { createCell } from "../../app/cell.ts";
import { useTRPC } from "../../app/client.tsx";
import { keepDraft, keptDraft } from "../../app/kept-drafts.ts";
import { nameOfPost, useStanding } from "../../app/standing.tsx";
import { isDevice } from "../../app/table.ts";
import type { AttemptView } from "./types.ts";

/** What was typed of a correction. */
export interface CorrectionDraft {
  readonly values: Typed;
  readonly lengths: LengthUnit;
  readonly bib: string;
  readonly reason: string;
}

interface Correcting {
  readonly attempt: AttemptView;
  /** Null until something is changed. */
  readonly draft: CorrectionDraft | null;
}

/** What was typed of an entry from paper. */
export interface EntryDraft {
  readonly bib: string;
  /** True if the bib's athlete stood there. */
  readonly isFound: boolean;
  readonly typed: Typed;
}

/**
 * What is half done at stations, by day, whose desk it was, and test. It outlives its screen: another screen, the other
 * view of the station or the end of a heat must not drop it.
 */
const correcting = createCell<ReadonlyMap<string, Correcting>>(new Map());
const entries = new Map<string, EntryDraft>();

function usePlace(test: TestCode): string {
  const { post } = useStanding();
  const current = useQuery(useTRPC().day.current.queryOptions()).data;
  return [current?.kind, current?.day?.id, nameOfPost(post), test].join(" ");
}

export interface Corrections {
  /** The correction that is open; null for none. */
  readonly open: Correcting | null;
  readonly correct: (attempt: AttemptView) => void;
  readonly keep: (draft: CorrectionDraft) => void;
  readonly close: () => void;
}

/** The one correction that can be open at a station. */
export function useCorrections(test: TestCode): Corrections {
  const place = usePlace(test);
  const all = correcting.use();
  function set(next: Correcting | null): void {
    const others = [...correcting.get()].filter(([name]) => name !== place);
    correcting.set(new Map(next === null ? others : [...others, [place, next]]));
  }
  return {
    open: all.get(place) ?? null,
    correct: (attempt) => set({ attempt, draft: null }),
    keep(draft) {
      const now = correcting.get().get(place);
      if (now !== undefined) set({ ...now, draft });
    },
    close: () => set(null),
  };
}

/** The half-typed entry of a station. */
export function useEntryDraft(test: TestCode): {
  readonly first: () => EntryDraft | null;
  readonly keep: (draft: EntryDraft) => void;
} {
  const place = usePlace(test);
  return {
    first: () => entries.get(place) ?? (isDevice ? keptDraft(test) : null),
    keep(draft) {
      entries.set(place, draft);
      if (isDevice) keepDraft(test, draft);
    },
  };
}
