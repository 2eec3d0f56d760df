import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";

/** A screen of the desk; `test` is a station's test. */
export type Place = { readonly path: string } & (
  | { readonly key: "day" | "sheets" | "checkIn" | "athletes" | "bundle"; readonly test: null }
  | { readonly key: TestCode; readonly test: TestCode }
);

/** The desk's screens in the order of a day; the first ten get a shortcut, Alt+0 to Alt+9. */
export const places: readonly Place[] = [
  { key: "day", path: "/day", test: null },
  { key: "sheets", path: "/sheets", test: null },
  { key: "checkIn", path: "/check-in", test: null },
  ...testCodes.map((test): Place => ({ key: test, path: `/station/${test}`, test })),
  { key: "athletes", path: "/athletes", test: null },
  { key: "bundle", path: "/bundle", test: null },
];

/** True if a path is that screen or lies under it. */
export function isAt(path: string, place: Place): boolean {
  return isUnder(place.path, path);
}

/** True if a path is that one or lies under it. */
export function isUnder(root: string, path: string): boolean {
  return path === root || path.startsWith(`${root}/`);
}

/** Returns the one way back: from one of several to all of them, from a screen to the day, from the day to the start. */
export function parentOf(path: string): "/" | "/day" | "/athletes" | "/noise" | "/study" | null {
  if (path === "/" || path === "" || path === "/backups") return null;
  if (isUnder("/study", path)) return path === "/study" ? "/noise" : "/study";
  if (/^\/(?:cards|devices|instructions|noise|papers|plan|reference|rehearsal|summary)(?:\/|$)/.test(path))
    return "/day";
  const place = places.find((candidate) => isAt(path, candidate));
  if (place === undefined || place.key === "day") return "/";
  return place.key === "athletes" && path !== place.path ? "/athletes" : "/day";
}
