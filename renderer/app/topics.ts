/** The groups of procedures to read again for each topic of the change feed; a topic missing here means all. */
const groupsOf: Readonly<Record<string, readonly string[]>> = {
  people: [
    "heat",
    "people",
    "checkIn",
    "day",
    "board",
    "station",
    "bundle",
    "cards",
    "noise",
    "papers",
    "summary",
  ],
  entrants: [
    "heat",
    "checkIn",
    "station",
    "board",
    "day",
    "people",
    "bundle",
    "cards",
    "noise",
    "papers",
    "summary",
  ],
  attempts: ["heat", "station", "board", "day", "people", "bundle", "cards", "noise", "summary"],
  calls: ["heat", "station", "board", "day"],
  board: ["board"],
  lock: ["lock"],
  language: ["language"],
  network: ["network"],
  references: ["reference", "people", "cards"],
  heats: ["heat", "station", "board", "day", "summary"],
};

/** Returns the groups to read again, or null for everything. */
export function groupsToRead(topics: Iterable<string>): ReadonlySet<string> | null {
  const groups = new Set<string>();
  for (const topic of topics) {
    const named = groupsOf[topic];
    if (named === undefined) return null;
    for (const group of named) groups.add(group);
  }
  return groups;
}
