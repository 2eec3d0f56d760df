import type { Length } from "../length.ts";
import {
  type EitherTime,
  eitherTime,
  fromUnit,
  parseCount,
  parseLength,
  parseTime,
  type Unread,
} from "../units.ts";
import type { Sentence } from "../words.ts";
import type { LengthUnit } from "./protocol.ts";

/** The text in a test's fields, by field name; a missing field is empty. */
export type Typed = Readonly<Record<string, string>>;

/** Reads fields one by one and collects their errors; an unreadable field counts as 0. */
export interface Reading {
  readonly errors: Readonly<Record<string, Sentence>>;
  /** Times that were read, and could be other ones: their colon may have been left out. */
  readonly eithers: Readonly<Record<string, EitherTime>>;
  text(name: string): string;
  isEmpty(name: string): boolean;
  count(name: string): number;
  /** In ms. */
  time(name: string): number;
  length(name: string, unit: LengthUnit): Length;
  /** In g; typed in kilograms, or in pounds beside inches. */
  mass(name: string, unit: LengthUnit): number;
}

/** Hundredths of a milligram in a pound: exact (international yard and pound agreement, 1959). */
const poundInHundredths = 45_359_237;

export function readingOf(typed: Typed): Reading {
  const errors: Record<string, Sentence> = {};
  const eithers: Record<string, EitherTime> = {};
  const text = (name: string) => typed[name] ?? "";

  function take<Key extends string>(name: string, read: Record<Key, number> | Unread, key: Key): number {
    if (key in read) return (read as Record<Key, number>)[key];
    errors[name] = (read as Unread).sentence;
    return 0;
  }

  function length(name: string, unit: LengthUnit): Length {
    const read = parseLength(text(name), unit);
    if ("length" in read) return read.length;
    errors[name] = read.sentence;
    return { unit: "cm", halves: 0 };
  }

  function time(name: string): number {
    const either = eitherTime(text(name));
    if (either !== null) eithers[name] = either;
    return take(name, parseTime(text(name)), "ms");
  }

  return {
    errors,
    eithers,
    text,
    isEmpty: (name) => text(name).trim() === "",
    count: (name) => take(name, parseCount(text(name)), "count"),
    time,
    length,
    mass(name, unit) {
      const thousandths = take(name, fromUnit({ unit: "cm", perUnit: 1000 }, text(name)), "value");
      return unit === "cm" ? thousandths : Math.round((thousandths * poundInHundredths) / 100_000_000);
    },
  };
}
