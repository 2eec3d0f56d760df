/** Which groups of procedures to read again for a topic of the change feed; a topic not named here means all. */
const groupsOf: Readonly<Record<string, readonly string[]>> = {
  people: ["people", "checkIn", "day", "board", "station", "bundle"],
  entrants: ["checkIn", "station", "board", "day", "people", "bundle"],
  attempts: ["station", "board", "day", "people", "bundle"],
  calls: ["station", "board", "day"],
};

/** The groups to read again, or null for everything. */
export function groupsToRead(topics: Iterable<string>): ReadonlySet<string> | null {
  const groups = new Set<string>();
  for (const topic of topics) {
    const named = groupsOf[topic];
    if (named === undefined) return null;
    for (const group of named) groups.add(group);
  }
  return groups;
}
