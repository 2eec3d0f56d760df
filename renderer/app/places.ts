import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";

/** A place of the desk; `test` is the one of a station. */
export type Place = { readonly path: string } & (
  | { readonly key: "day" | "sheets" | "checkIn" | "athletes" | "bundle"; readonly test: null }
  | { readonly key: TestCode; readonly test: TestCode }
);

/** The desk's places in the order of a day; their order gives the first ten a shortcut, Alt+0 to Alt+9. */
export const places: readonly Place[] = [
  { key: "day", path: "/day", test: null },
  { key: "sheets", path: "/sheets", test: null },
  { key: "checkIn", path: "/check-in", test: null },
  ...testCodes.map((test): Place => ({ key: test, path: `/station/${test}`, test })),
  { key: "athletes", path: "/athletes", test: null },
  { key: "bundle", path: "/bundle", test: null },
];

/** Whether a path is that place or lies under it. */
export function isAt(path: string, place: Place): boolean {
  return path === place.path || path.startsWith(`${place.path}/`);
}

/** The one way back: from one athlete to all of them, from a place to the day, from the day to the start. */
export function parentOf(path: string): "/" | "/day" | "/athletes" | null {
  if (path === "/" || path === "") return null;
  if (/^\/(?:cards|instructions|noise|reference|rehearsal|summary)(?:\/|$)/.test(path)) return "/day";
  const place = places.find((candidate) => isAt(path, candidate));
  if (place === undefined || place.key === "day") return "/";
  return place.key === "athletes" && path !== place.path ? "/athletes" : "/day";
}
