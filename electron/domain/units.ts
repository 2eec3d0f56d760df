import { grainsPerCentimetre, grainsPerReading, isWithinTape, type Length } from "./length.ts";
import type { Grain, LengthUnit } from "./tests/protocol.ts";
import { type Sentence, sentence } from "./words.ts";

/** The refusal of entered text: the reason, and what to write instead. */
export interface Unread {
  readonly sentence: Sentence;
}

/** A day, in ms: longer than any clock of a testing day runs. */
const longestTime = 86_400_000;

function unread(key: Sentence): Unread {
  return { sentence: key };
}

/**
 * The text with its decimal comma as a point. A comma alone between two digits is one in every language, since nothing
 * that is read here reaches thousands; undefined where the text has a comma in another place or beside a point.
 */
function withPoint(text: string): string | undefined {
  if (!text.includes(",")) return text;
  return /^[^.,]*\d,\d[^.,]*$/.test(text) ? text.replace(",", ".") : undefined;
}

/** Reads a plain number with a decimal point or comma, as settings are typed; undefined where it is none. */
export function parseNumber(text: string): number | undefined {
  const plain = withPoint(text.trim());
  return plain !== undefined && /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : undefined;
}

/**
 * Reads a length as it stands on a tape: whole or half centimetres (`219`, `43.5`), or inches with halves and quarters,
 * with or without feet (`86.5"`, `86 1/2`, `7' 2 1/2"`), with a decimal point or comma. A unit may be written behind;
 * another one is refused.
 */
export function parseLength(text: string, unit: LengthUnit): { readonly length: Length } | Unread {
  const plain = withPoint(plainMarks(text));
  if (plain === undefined) return unread(sentence("units.comma"));
  if (plain === "") return unread(sentence("units.length.empty"));
  if (unit === "cm" && /["'/]|in$/.test(plain)) return unread(sentence("units.length.notInches"));
  if (unit === "in" && /cm$/.test(plain)) return unread(sentence("units.length.notCentimetres"));
  const length = unit === "cm" ? inHalfCentimetres(plain) : inQuarterInches(plain);
  if (length !== undefined && !isWithinTape(length)) return unread(sentence("units.length.tooLong"));
  if (length !== undefined) return { length };
  return unread(unit === "cm" ? sentence("units.length.centimetres") : sentence("units.length.inches"));
}

/** Replaces curly quotes, primes and fraction characters by plain ones. */
function plainMarks(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replaceAll(/[’′]/g, "'")
    .replaceAll(/[”″]|''/g, '"')
    .replaceAll(
      /\s*([½¼¾])/g,
      (_all, fraction: string) => ` ${{ "½": "1/2", "¼": "1/4", "¾": "3/4" }[fraction]}`,
    )
    .trim();
}

function inHalfCentimetres(plain: string): Length | undefined {
  const parts = /^(\d{1,4})(?:\.([05])0?)?\s*(?:cm)?$/.exec(plain);
  if (parts === null) return undefined;
  return { unit: "cm", halves: Number(parts[1]) * 2 + (parts[2] === "5" ? 1 : 0) };
}

const quartersOf: Readonly<Record<string, number>> = {
  "0": 0,
  "00": 0,
  "25": 1,
  "5": 2,
  "50": 2,
  "75": 3,
  "1/4": 1,
  "1/2": 2,
  "2/4": 2,
  "3/4": 3,
};

/** Feet, inches and a fraction; each may be missing, but not all. */
const inchForm =
  /^(?:(?<feet>\d{1,2})\s*')?\s*(?:(?:(?<inches>\d{1,3})(?:\.(?<decimals>\d+)|[\s-]+(?<fraction>\d\/\d))?|(?<only>\d\/\d))\s*(?:"|in)?)?$/;

function inQuarterInches(plain: string): Length | undefined {
  const found = inchForm.exec(plain)?.groups;
  if (found === undefined) return undefined;
  const { feet, inches, decimals, fraction, only } = found;
  if (feet === undefined && inches === undefined && only === undefined) return undefined;
  if (feet !== undefined && Number(inches ?? 0) >= 12) return undefined;
  const part = quartersOf[decimals ?? fraction ?? only ?? "0"];
  if (part === undefined) return undefined;
  return { unit: "in", quarters: 4 * (12 * Number(feet ?? 0) + Number(inches ?? 0)) + part };
}

/**
 * Formats a height in grains for people, without the unit: as a tape of that unit gives it where it can, else centimetres
 * to the nearest tenth and inches to the nearest hundredth.
 */
export function formatLength(grains: number, unit: LengthUnit): string {
  if (unit === "cm") return String(Math.round((grains * 10) / grainsPerCentimetre) / 10);
  const quarters = grains / grainsPerReading.in;
  return String(Number.isInteger(quarters) ? quarters / 4 : Math.round(quarters * 25) / 100);
}

/**
 * Reads a time into whole milliseconds: `m:ss`, `m:ss.s`, `h:mm:ss`, or plain seconds (`75`, `75.5`, `9 s`), with at
 * most three decimals after a point or a comma. `3.00` alone could be minutes or seconds and is refused; so is `1,020`,
 * a thousand and twenty seconds to some and hardly more than one to others.
 */
export function parseTime(text: string): { readonly ms: number } | Unread {
  const plain = withPoint(text.trim());
  if (plain === undefined) return unread(sentence("units.comma"));
  if (plain === "") return unread(sentence("units.time.empty"));
  const thousands = /^([1-9]\d{0,2}),(\d{3})(?!\d)/.exec(text.trim());
  if (thousands !== null) return unread(eitherReading(thousands));
  const parts = /^(?:(?:(\d{1,2}):)?(\d{1,4}):)?(\d{1,6})(?:\.(\d+))?(\s*s)?$/.exec(plain);
  if (parts === null) return unread(sentence("units.time.form"));
  const [, hours, minutes, seconds = "", decimals = "", suffix] = parts;
  const refusal = timeRefusal({ hours, minutes, seconds, decimals, suffix });
  if (refusal !== undefined) return unread(refusal);
  const whole = (Number(hours ?? 0) * 60 + Number(minutes ?? 0)) * 60 + Number(seconds);
  const ms = whole * 1000 + Number(decimals.padEnd(3, "0"));
  return ms > longestTime ? unread(sentence("units.time.tooLong")) : { ms };
}

/** What digits without their colon can mean, as text that `parseTime` reads in one way alone. */
export interface EitherTime {
  /** As minutes and seconds: `1:45`. */
  readonly minutes: string;
  /** As seconds: `145 s`. */
  readonly seconds: string;
  /** The seconds on a clock: `2:25`. */
  readonly clock: string;
}

/**
 * Returns both readings of three or four digits whose colon may have been left out: `145` is `1:45`, or 145 seconds.
 * Null for any other text; the last two digits of `190` can be no seconds.
 */
export function eitherTime(text: string): EitherTime | null {
  const parts = /^(\d{1,2})([0-5]\d)([.,]\d{1,3})?$/.exec(text.trim());
  const [, minutes = "", seconds = "", part = ""] = parts ?? [];
  if (parts === null || Number(minutes) === 0) return null;
  const digits = minutes + seconds;
  return {
    minutes: `${Number(minutes)}:${seconds}${part}`,
    seconds: `${digits}${part} s`,
    clock: formatTime(Number(digits) * 1000, false) + part,
  };
}

function eitherReading([, whole = "", part = ""]: RegExpExecArray): Sentence {
  return sentence("units.time.thousands", {
    whole: `${whole}${part}`,
    part: `${formatTime(Number(whole) * 1000, false)}.${part}`,
  });
}

interface TimeParts {
  readonly hours: string | undefined;
  readonly minutes: string | undefined;
  readonly seconds: string;
  readonly decimals: string;
  readonly suffix: string | undefined;
}

function timeRefusal({ hours, minutes, seconds, decimals, suffix }: TimeParts): Sentence | undefined {
  if (decimals.length > 3) return sentence("units.time.tooFine");
  if (minutes === undefined) {
    const ambiguous =
      suffix === undefined && decimals.length === 2 && Number(seconds) < 60 && Number(decimals) < 60;
    const values = { minutes: `${Number(seconds)}:${decimals}`, seconds: `${Number(seconds)}.${decimals} s` };
    return ambiguous ? sentence("units.time.ambiguous", values) : undefined;
  }
  if (suffix !== undefined || seconds.length !== 2) return sentence("units.time.form");
  if (hours !== undefined && minutes.length !== 2) return sentence("units.time.form");
  const over = Number(seconds) >= 60 || (hours !== undefined && Number(minutes) >= 60);
  return over ? sentence("units.time.sixty") : undefined;
}

/**
 * Formats milliseconds as `m:ss`, from an hour on as `h:mm:ss`, with one decimal for `tenths`. The rest is cut off:
 * only the rules round. A change for the worse may be below zero: `-0:01.5`.
 */
export function formatTime(ms: number, tenths: boolean): string {
  if (ms < 0) return `-${formatTime(-ms, tenths)}`;
  const whole = Math.floor(ms / 1000);
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor(whole / 60) % 60;
  const seconds = String(whole % 60).padStart(2, "0");
  const start = hours === 0 ? String(minutes) : `${hours}:${String(minutes).padStart(2, "0")}`;
  const end = tenths ? `.${Math.floor((ms % 1000) / 100)}` : "";
  return `${start}:${seconds}${end}`;
}

/** Parses a count: whole numbers of at most six digits, without sign, decimals or anything else. */
export function parseCount(text: string): { readonly count: number } | Unread {
  const plain = text.trim();
  if (plain === "") return unread(sentence("units.count.empty"));
  if (/^\d{7,}$/.test(plain)) return unread(sentence("units.count.tooLong"));
  if (!/^\d+$/.test(plain)) return unread(sentence("units.count.whole"));
  return { count: Number(plain) };
}

/** Converts grains into the unit on sheets: 118 quarter landings are 29.5 landings. */
export function inUnit(grain: Grain, value: number): number {
  return value / grain.perUnit;
}

/**
 * The way back, from the text of a sheet (`29.5` or `29,5`), worked out on the decimal digits so that no binary fraction rounds.
 * Refused when the text is no plain decimal number or falls between two grains (29.6 landings).
 */
export function fromUnit(grain: Grain, text: string): { readonly value: number } | Unread {
  const plain = withPoint(text.trim());
  if (plain === undefined) return unread(sentence("units.comma"));
  const parts = /^(\d{1,7})(?:\.(\d{1,6}))?$/.exec(plain);
  if (parts === null) return unread(sentence("units.number"));
  const [, whole = "", decimals = ""] = parts;
  const scaled = Number(whole + decimals) * grain.perUnit;
  const scale = 10 ** decimals.length;
  if (scaled % scale !== 0) return unread(sentence("units.grain", { step: 1 / grain.perUnit }));
  return { value: scaled / scale };
}
