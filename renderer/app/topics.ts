/** The groups that tell of people, by name or by what they did. */
const ofPeople = [
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
  "plan",
  "study",
  "summary",
];

/** The groups of procedures to read again for each topic of the change feed; a topic missing here means all. */
const groupsOf: Readonly<Record<string, readonly string[]>> = {
  people: ofPeople,
  entrants: ofPeople,
  attempts: ["heat", "station", "board", "day", "people", "bundle", "cards", "noise", "study", "summary"],
  plan: ["plan", "day"],
  forecast: [],
  calls: ["heat", "station", "board", "day"],
  board: ["board"],
  lock: ["lock"],
  language: ["language"],
  network: ["network"],
  references: ["reference", "people", "cards"],
  studies: ["study", "people"],
  heats: ["heat", "station", "board", "day", "summary"],
};

/** Returns the groups to read again, or null for everything. */
function groupsToRead(topics: Iterable<string>): ReadonlySet<string> | null {
  const groups = new Set<string>();
  for (const topic of topics) {
    const named = groupsOf[topic];
    if (named === undefined) return null;
    for (const group of named) groups.add(group);
  }
  return groups;
}

/** Queries that change less often than the others of their group: the topics that touch them. */
const narrower: Readonly<Record<string, readonly string[]>> = {
  "day.current": [],
  "day.protocols": [],
  "day.history": [],
  "board.hidden": ["board"],
  "day.forecast": ["forecast", "plan", "people", "entrants", "attempts", "calls", "heats"],
  "study.toRead": ["people", "entrants", "attempts", "calls", "heats", "studies"],
};

/** The groups that show the station of one test. */
const ofStations: readonly string[] = ["heat", "station"];

/** What is known of a shown query: its path, and the test that it asks about. */
export interface AskedQuery {
  readonly path: readonly string[];
  readonly test: string | undefined;
}

/** Changes to read again. */
export interface Changed {
  readonly topics: ReadonlySet<string>;
  /** The tests whose stations may look different; null: all. */
  readonly tests: ReadonlySet<string> | null;
}

/** Returns whether a query may have another answer after the changes. */
export function isTouched({ path, test }: AskedQuery, { topics, tests }: Changed): boolean {
  const groups = groupsToRead(topics);
  if (groups === null) return true;
  const [group = ""] = path;
  const own = narrower[path.join(".")];
  if (own !== undefined) return own.some((topic) => topics.has(topic));
  if (!groups.has(group)) return false;
  return tests === null || test === undefined || !ofStations.includes(group) || tests.has(test);
}
