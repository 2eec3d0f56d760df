import { useState } from "react";
import { useTranslation } from "react-i18next";
import { readKeyed, startOf } from "../../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../../../electron/domain/tests/reading.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../../../electron/domain/words.ts";
import { useTRPCClient } from "../../../app/client.tsx";
import { sentenceOf } from "../../../app/trouble.ts";
import { showNumbers } from "../../../words/numbers.ts";
import type { Found, StationPerson, Told } from "../types.ts";
import { type Sending, useSend } from "./useSend.ts";

/** The attempts saved last; they stay until the next athlete is found. */
export interface Saved {
  readonly who: StationPerson;
  readonly told: Told | null;
  readonly seen: readonly unknown[];
  /** The newest of the attempts. */
  readonly attemptId: string;
}

export interface KeyedEntry {
  readonly bib: string;
  readonly setBib: (typed: string) => void;
  readonly bibError: Sentence | null;
  readonly found: Found | null;
  readonly values: Typed;
  readonly setValue: (name: string, typed: string) => void;
  readonly errors: Readonly<Record<string, Sentence>>;
  readonly sending: Sending;
  readonly saved: Saved | null;
  /** Finds the athlete; by default by the typed bib. */
  readonly find: (bib?: string) => Promise<boolean>;
  /** Reads the fields and sends them; names a field that can't be read. */
  readonly save: (sure: boolean) => Promise<"saved" | "open" | { readonly field: string }>;
  /** Withdraws a question. */
  readonly unask: () => void;
  /** Goes back to the bib; the typed values stay for the next athlete. */
  readonly leave: () => void;
}

const newTickets = () => Array.from({ length: 3 }, () => crypto.randomUUID());

function startingAt(test: TestCode, { standing, variant }: Found, lengths: LengthUnit): Typed {
  return startOf(test, { seen: standing.map(({ seen }) => seen), variant }, lengths);
}

/** Holds the state of keyed entry: a bib, then its athlete's values. `parameters`: the day's frozen ones. */
export function useKeyedEntry(test: TestCode, parameters: unknown, lengths: LengthUnit): KeyedEntry {
  const client = useTRPCClient();
  const { language } = useTranslation().i18n;
  const { sending, send, reset } = useSend();
  const [bib, setBib] = useState("");
  const [bibError, setBibError] = useState<Sentence | null>(null);
  const [found, setFound] = useState<Found | null>(null);
  const [typed, setTyped] = useState<Typed>({});
  const [errors, setErrors] = useState<Readonly<Record<string, Sentence>>>({});
  const [saved, setSaved] = useState<Saved | null>(null);
  // One ticket per attempt, kept through every try: a retry can't enter anything twice.
  const [tickets, setTickets] = useState<readonly string[]>(newTickets);
  const values =
    found === null ? typed : { ...showNumbers(startingAt(test, found, lengths), language), ...typed };

  async function find(wanted = bib): Promise<boolean> {
    setBib(wanted);
    reset();
    try {
      const athlete = await client.station.find.query({ test, bib: wanted, lengths });
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

  async function save(sure: boolean): ReturnType<KeyedEntry["save"]> {
    if (found === null) return "open";
    const keyed = readKeyed(test, parameters, values, lengths);
    if ("errors" in keyed) {
      setErrors(keyed.errors);
      return { field: Object.keys(keyed.errors)[0] ?? "" };
    }
    setErrors({});
    const attempts = keyed.seen.map((seen, index) => ({ id: tickets[index] ?? crypto.randomUUID(), seen }));
    const { athleteId } = found.who;
    const variant = values.variant ?? "";
    const answer = await send({ athleteId, test, variant, attempts, sure, lengths });
    if (answer === undefined) return "open";
    finish({ who: found.who, told: answer.told, seen: keyed.seen, attemptId: attempts.at(-1)?.id ?? "" });
    return "saved";
  }

  function finish(done: Saved): void {
    setSaved(done);
    setFound(null);
    setTyped({});
    // After half a quadrant jump the same athlete mostly turns round and goes on.
    setBib(done.told?.mark.state === "incomplete" ? String(done.who.bib ?? "") : "");
  }

  function leave(): void {
    setFound(null);
    setErrors({});
    reset();
  }

  return {
    bib,
    setBib(next) {
      setBib(next);
      setBibError(null);
    },
    bibError,
    found,
    values,
    setValue(name, text) {
      setTyped((before) => ({ ...before, [name]: text }));
      setErrors(({ [name]: _mended, ...rest }) => rest);
      if (sending.state === "refused" && !sending.again) reset();
    },
    errors,
    sending,
    saved,
    find,
    save,
    unask: reset,
    leave,
  };
}
