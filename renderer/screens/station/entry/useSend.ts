import { useMutation } from "@tanstack/react-query";
import { useRef, useState } from "react";
import type { EitherField } from "../../../../electron/domain/keyed/keyed.ts";
import type { Sentence } from "../../../../electron/domain/words.ts";
import { useTRPC } from "../../../app/client.tsx";
import { useInitials } from "../../../app/initials.tsx";
import { type Came, keepAndSend, type MendedAttempt } from "../../../app/kept-entries.ts";
import { isDevice } from "../../../app/table.ts";
import { isUnanswered, sentenceOf } from "../../../app/trouble.ts";
import type { Entry, Told } from "../types.ts";

/** The state of an entry. */
export type Sending =
  | { readonly state: "idle" }
  | { readonly state: "busy" }
  | { readonly state: "asked"; readonly questions: readonly Sentence[] }
  /** A time that can be read in two ways: nothing was sent yet. */
  | { readonly state: "either"; readonly either: EitherField }
  /** The questions were answered with no, and nothing was changed since. */
  | { readonly state: "declined"; readonly questions: readonly Sentence[] }
  /** `again`: no answer came, and the same tickets may be sent once more. */
  | { readonly state: "refused"; readonly sentence: Sentence; readonly again: boolean };

/** True while something has to be answered before anything goes on. */
export function isAsking({ state }: Sending): boolean {
  return state === "asked" || state === "either";
}

/** `waits`: it lies on this device, and the table has not answered yet. */
interface Done {
  readonly told: Told | null;
  readonly waits: boolean;
}

export interface Send<Item extends readonly unknown[]> {
  readonly sending: Sending;
  /** Sends an item; returns its mark once it is saved, or that it waits on this device; undefined while it does neither. */
  readonly send: (...item: Item) => Promise<Done | undefined>;
  /** Asks which of two times is meant. */
  readonly askEither: (either: EitherField) => void;
  /** Answers what is asked with no. */
  readonly decline: () => void;
  /** Forgets what is no longer true once a field is written anew. */
  readonly change: () => void;
  readonly reset: () => void;
}

/** An entry, whose bib it is, and what it corrects. */
type OneEntry = [entry: Omit<Entry, "by">, bib: number | null, mended?: MendedAttempt];

/** Sends entries one at a time, and keeps each answer until the next one. */
export function useSend(): Send<OneEntry> {
  const trpc = useTRPC();
  const enter = useMutation(trpc.station.enter.mutationOptions({ meta: { shownByScreen: true } }));
  return useSender<OneEntry>((by, unsigned, bib, mended) => {
    const entry = { ...unsigned, by };
    return isDevice ? sendKept(entry, bib, mended) : enter.mutateAsync(entry);
  });
}

/** Sends items by whoever enters them, one at a time, and keeps each answer until the next one. */
export function useSender<Item extends readonly unknown[]>(
  deliver: (by: string, ...item: Item) => Promise<Came>,
): Send<Item> {
  const { ask } = useInitials();
  const [sending, setSending] = useState<Sending>({ state: "idle" });
  const busy = useRef(false);
  const reset = () => setSending({ state: "idle" });

  async function sendBy(by: string, item: Item): Promise<Done | undefined> {
    setSending({ state: "busy" });
    try {
      const answer = await deliver(by, ...item);
      if (answer.outcome !== "ask") {
        setSending({ state: "idle" });
        const waits = answer.outcome === "waits";
        return { told: answer.outcome === "saved" ? answer.told : null, waits };
      }
      setSending({ state: "asked", questions: answer.questions });
    } catch (error) {
      setSending({ state: "refused", sentence: sentenceOf(error), again: isUnanswered(error) });
    }
    return undefined;
  }

  async function send(...item: Item) {
    // A second Enter while the first is on its way is the same Enter.
    if (busy.current) return undefined;
    busy.current = true;
    try {
      const by = await ask();
      return by === null ? undefined : await sendBy(by, item);
    } finally {
      busy.current = false;
    }
  }
  return {
    sending,
    send,
    askEither: (either) => setSending({ state: "either", either }),
    decline() {
      if (sending.state === "asked") setSending({ state: "declined", questions: sending.questions });
      else reset();
    },
    change() {
      // Without an answer the same may have been saved: its tickets are kept, and so is what is said about it.
      const stays = sending.state === "busy" || (sending.state === "refused" && sending.again);
      if (!stays && sending.state !== "idle") reset();
    },
    reset,
  };
}

/** The device's disk first; then the table. */
function sendKept(entry: Entry, bib: number | null, mended: MendedAttempt | undefined) {
  const id = entry.attempts[0]?.id ?? crypto.randomUUID();
  return keepAndSend({ what: "enter", id, bib, entry, mended });
}
