/** The desk's places in the order of a day; their order gives each its shortcut, Alt+0 to Alt+9. */
export const places = [
  { key: "day", path: "/day", test: null },
  { key: "sheets", path: "/sheets", test: null },
  { key: "checkIn", path: "/check-in", test: null },
  { key: "strength", path: "/station/push-up", test: "push-up" },
  { key: "agility", path: "/station/agility", test: "agility" },
  { key: "power", path: "/station/vertical", test: "vertical" },
  { key: "core", path: "/station/core", test: "core" },
  { key: "endurance", path: "/station/endurance", test: "endurance" },
  { key: "athletes", path: "/athletes", test: null },
  { key: "bundle", path: "/bundle", test: null },
] as const;

export type Place = (typeof places)[number];

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
