import { useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { readClock } from "../../../../electron/domain/day/clock.ts";
import { readKeyed, startOf } from "../../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../../../electron/domain/tests/reading.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../../../electron/domain/words.ts";
import { useTRPCClient } from "../../../app/client.tsx";
import { sentenceOf } from "../../../app/trouble.ts";
import { showNumbers } from "../../../words/numbers.ts";
import { type EntryDraft, isTyped, useEntryDraft } from "../drafts.ts";
import type { Found, StationPerson, Told } from "../types.ts";
import { type AheadBox, useAhead } from "./ahead.ts";
import { type Sending, useSend } from "./useSend.ts";

/** The attempts saved last; they stay until the next athlete is found. */
export interface Saved {
  readonly who: StationPerson;
  readonly told: Told | null;
  /** True on a device while the table has not answered: it lies on the device alone. */
  readonly waits: boolean;
  readonly seen: readonly unknown[];
  /** The newest of the attempts. */
  readonly attemptId: string;
}

type Outcome = "open" | { readonly field: string } | { readonly next: string | null };

export interface KeyedEntry {
  readonly bib: string;
  readonly setBib: (typed: string) => void;
  readonly bibError: Sentence | null;
  readonly found: Found | null;
  readonly values: Typed;
  readonly setValue: (name: string, typed: string) => void;
  readonly errors: Readonly<Record<string, Sentence>>;
  /** True while a pile of paper is entered: what was done earlier makes nobody rest. */
  readonly isPaper: boolean;
  readonly setPaper: (isPaper: boolean) => void;
  /** The time of day on the paper, as typed; empty where it has none. */
  readonly doneAt: string;
  readonly setDoneAt: (typed: string) => void;
  readonly sending: Sending;
  /** What was typed for the next athlete before this one's entry was through. */
  readonly box: AheadBox;
  readonly saved: Saved | null;
  /** Finds the athlete; by default by the typed bib. */
  readonly find: (bib?: string) => Promise<boolean>;
  /** Reads the fields and sends them; names a field that can't be read, and a next bib that was typed ahead. */
  readonly save: (sure: boolean, written?: Typed) => Promise<Outcome>;
  /** Answers a question with no. */
  readonly decline: () => void;
  /** Goes back to the bib; the typed values stay for the next athlete. */
  readonly leave: () => void;
}

/** Reads the time on the paper; null where it can't be read. */
function paperOf(typed: string): { readonly at: string | null } | null {
  if (typed.trim() === "") return { at: null };
  const at = readClock(typed);
  return at === null ? null : { at };
}

const newTickets = () => Array.from({ length: 3 }, () => crypto.randomUUID());

function startingAt(test: TestCode, { standing, variant }: Found, lengths: LengthUnit): Typed {
  return startOf(test, { seen: standing.map(({ seen }) => seen), variant }, lengths);
}

/** Somebody of whom nothing was typed gives way to the next bib: its digits must not end up as the values of the last one. */
function resumed(draft: EntryDraft | null): EntryDraft | null {
  return draft !== null && draft.athleteId !== null && !isTyped(draft.typed) ? null : draft;
}

/** Holds the state of keyed entry: a bib, then its athlete's values. `parameters`: the day's frozen ones. */
export function useKeyedEntry(test: TestCode, parameters: unknown, lengths: LengthUnit): KeyedEntry {
  const client = useTRPCClient();
  const { language } = useTranslation().i18n;
  const { sending, send, askEither, decline, change, reset } = useSend();
  const box = useAhead();
  const { first: left, keep } = useEntryDraft(test);
  const [first] = useState(() => resumed(left()));
  const [bib, setBib] = useState(first?.bib ?? "");
  const [bibError, setBibError] = useState<Sentence | null>(null);
  const [found, setFound] = useState<Found | null>(null);
  const [typed, setTyped] = useState<Typed>(first?.typed ?? {});
  const [errors, setErrors] = useState<Readonly<Record<string, Sentence>>>({});
  const [saved, setSaved] = useState<Saved | null>(null);
  const [isPaper, setPaper] = useState(false);
  const [doneAt, setDoneAt] = useState("");
  // One ticket per attempt, kept through every try: a retry can't enter anything twice.
  const [tickets, setTickets] = useState<readonly string[]>(newTickets);
  const values =
    found === null ? typed : { ...showNumbers(startingAt(test, found, lengths), language), ...typed };

  // What was left half typed stays kept until its athlete is here again, or somebody types another bib.
  const isResuming = useRef(first !== null && first.athleteId !== null);

  useEffect(() => {
    const athleteId = found?.who.athleteId ?? null;
    if (!isResuming.current) keep({ bib, athleteId, typed: found === null ? {} : typed });
  }, [keep, bib, found, typed]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the screen is there again
  useEffect(() => {
    if (isResuming.current) void find();
  }, []);

  async function find(wanted = bib): Promise<boolean> {
    setBib(wanted);
    box.take();
    reset();
    try {
      const athlete = await client.station.find.query({ test, bib: wanted, lengths });
      isResuming.current = false;
      setFound(athlete);
      setBibError(null);
      setErrors({});
      setSaved(null);
      setTickets(newTickets());
      return true;
    } catch (error) {
      setFound(null);
      setBibError(sentenceOf(error));
      return false;
    }
  }

  async function save(sure: boolean, written: Typed = {}): Promise<Outcome> {
    if (found === null) return "open";
    setTyped((before) => ({ ...before, ...written }));
    const keyed = readKeyed(test, parameters, { ...values, ...written }, lengths);
    if ("errors" in keyed) {
      setErrors(keyed.errors);
      return { field: Object.keys(keyed.errors)[0] ?? "" };
    }
    const paper = isPaper ? paperOf(doneAt) : undefined;
    if (paper === null) {
      setErrors({ doneAt: { key: "station:entry.noClock" } });
      return "open";
    }
    setErrors({});
    if ("either" in keyed) {
      askEither(keyed.either);
      return "open";
    }
    const attempts = keyed.seen.map((seen, index) => ({ id: tickets[index] ?? crypto.randomUUID(), seen }));
    const { athleteId } = found.who;
    const variant = values.variant ?? "";
    const about = { athleteId, test, variant, attempts, sure, lengths, ...(paper && { paper }) };
    const answer = await send(about, found.who.bib);
    if (answer === undefined) return "open";
    return finish({
      ...{ who: found.who, told: answer.told, waits: answer.waits, seen: keyed.seen },
      attemptId: attempts.at(-1)?.id ?? "",
    });
  }

  function finish(done: Saved): Outcome {
    setSaved(done);
    setFound(null);
    setTyped({});
    setDoneAt("");
    const ahead = box.take();
    // After half a quadrant jump the same athlete mostly turns round and goes on.
    const same = done.told?.mark.state === "incomplete" ? String(done.who.bib ?? "") : "";
    setBib(ahead.bib === "" ? same : ahead.bib);
    return { next: ahead.ended ? ahead.bib : null };
  }

  function leave(): void {
    const ahead = box.take();
    if (ahead.bib !== "") setBib(ahead.bib);
    setFound(null);
    setErrors({});
    reset();
  }

  return {
    bib,
    setBib(next) {
      isResuming.current = false;
      setBib(next);
      setBibError(null);
    },
    bibError,
    found,
    values,
    setValue(name, text) {
      setTyped((before) => ({ ...before, [name]: text }));
      setErrors(({ [name]: _mended, ...rest }) => rest);
      change();
    },
    errors,
    isPaper,
    setPaper,
    doneAt,
    setDoneAt(typed) {
      setDoneAt(typed);
      setErrors(({ doneAt: _mended, ...rest }) => rest);
      change();
    },
    sending,
    box,
    saved,
    find,
    save,
    decline,
    leave,
  };
}
