import { testCodes } from "../../domain/tests/registry.ts";
import { belongsTo, type Host, hosts } from "../scheme/hosts.ts";

/** The words in the addresses of the desk's screens; everything else in one may be personal. */
const known = new Set(
  [
    "day sheets check-in station second-judge athletes bundle noise study instructions summary report backups reference rehearsal lock devices join plan",
    "print cards held papers records bibs badges set-up",
    testCodes.join(" "),
    "a4 letter a5 half-letter a4-two letter-two all",
  ].flatMap((words) => words.split(" ")),
);

/** True if a place consists of those words and stars only. */
export function isPlace(text: string): boolean {
  return (
    text === "" || (text.startsWith("/") && text.split("/").every((word) => isKnown(word) || word === "*"))
  );
}

function isKnown(word: string): boolean {
  return word === "" || known.has(word);
}

/** A page for the log: its host, and its screen with a star for each unknown word of its address. */
export interface LogPlace {
  readonly host: Host | "other";
  readonly place: string;
}

/** Returns the page of an address. */
export function logPlaceOf(url: string): LogPlace {
  const host = hosts.find((each) => belongsTo(each, url)) ?? "other";
  if (host === "other") return { host, place: "" };
  const [path = ""] = new URL(url).hash.replace(/^#/, "").split("?");
  const words = path.split("/").map((word) => (isKnown(word) ? word : "*"));
  return { host, place: words.join("/") || "/" };
}
