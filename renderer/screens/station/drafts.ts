import { useQuery } from "@tanstack/react-query";
import { useCallback, useEffect } from "react";
import type { Typed } from "../../../electron/domain/tests/reading.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { createCell } from "../../app/cell.ts";
import { useTRPC } from "../../app/client.tsx";
import {
  type CorrectionDraft,
  dropDraft,
  type KeptDraft,
  keepDraft,
  keptCorrection,
  keptEntry,
} from "../../app/kept-drafts.ts";
import { nameOfPost, useStanding } from "../../app/standing.tsx";
import type { AttemptView } from "./types.ts";

interface Correcting {
  readonly attempt: AttemptView;
  /** Null until something is changed. */
  readonly draft: CorrectionDraft | null;
}

/** What was typed of an entry from paper. */
export interface EntryDraft {
  readonly bib: string;
  /** The bib's athlete; null before one was found. */
  readonly athleteId: number | null;
  readonly typed: Typed;
}

/**
 * What is half done at stations, by day, whose desk it was, and test. It outlives its screen: another screen, the other
 * view of the station or the end of a heat must not drop it.
 */
const correcting = createCell<ReadonlyMap<string, Correcting>>(new Map());
const entries = new Map<string, EntryDraft>();

function usePlace(test: TestCode): { readonly place: string; readonly isKnown: boolean } {
  const { post } = useStanding();
  const current = useQuery(useTRPC().day.current.queryOptions()).data;
  const place = [current?.kind, current?.day?.id, nameOfPost(post), test].join(" ");
  return { place, isKnown: current !== undefined };
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
  const { place, isKnown } = usePlace(test);
  const open = correcting.use().get(place) ?? null;
  function set(next: Correcting | null): void {
    const others = [...correcting.get()].filter(([name]) => name !== place);
    correcting.set(new Map(next === null ? others : [...others, [place, next]]));
    if (next?.draft == null) dropDraft({ is: "correction", test });
    else keepDraft(leftOf(test, next.attempt, next.draft));
  }
  useLeftCorrection(test, isKnown && open === null, set);
  return {
    open,
    correct: (attempt) => set({ attempt, draft: null }),
    keep(draft) {
      const now = correcting.get().get(place);
      if (now !== undefined) set({ ...now, draft });
    },
    close: () => set(null),
  };
}

function leftOf(test: TestCode, { who, attemptId }: AttemptView, draft: CorrectionDraft): KeptDraft {
  const { athleteId, bib } = who;
  return { is: "correction", test, athleteId, bib: String(bib ?? ""), attemptId, draft };
}

/** Opens the correction that an earlier page of this device left half typed; the attempt is read from the table anew. */
function useLeftCorrection(test: TestCode, isFree: boolean, open: (left: Correcting) => void): void {
  const trpc = useTRPC();
  const left = isFree ? keptCorrection(test) : null;
  const attemptId = left?.attemptId ?? "";
  const query = useQuery({ ...trpc.station.history.queryOptions({ attemptId }), enabled: left !== null });
  const attempt = query.data?.find((link) => link.attempt.attemptId === attemptId)?.attempt;
  useEffect(() => {
    if (left !== null && attempt !== undefined) open({ attempt, draft: left.draft });
  });
}

/** The half-typed entry of a station. */
export function useEntryDraft(test: TestCode): {
  readonly first: () => EntryDraft | null;
  readonly keep: (draft: EntryDraft) => void;
} {
  const { place } = usePlace(test);
  const keep = useCallback(
    (draft: EntryDraft) => {
      entries.set(place, draft);
      const { bib, athleteId, typed } = draft;
      if (athleteId === null || !isTyped(typed)) dropDraft({ is: "entry", test });
      else keepDraft({ is: "entry", test, athleteId, bib, typed });
    },
    [place, test],
  );
  return { first: () => entries.get(place) ?? keptEntry(test), keep };
}

/** True if anything stands in any of the fields. */
export function isTyped(typed: Typed): boolean {
  return Object.values(typed).some((text) => text.trim() !== "");
}
