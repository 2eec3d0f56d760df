import { type Ability, clock, makeReach, tapeOf } from "./marks.ts";
import { between, type Person, pick, roughlyNormal } from "./people.ts";
import { type DoneTest, doneTests } from "./tests.ts";

/** One row of the results, by column; what is not there is empty. */
export type ResultCells = Readonly<Record<string, string | number>>;

/** Who keyed the paper of which station. */
const keyedBy: Readonly<Record<DoneTest, readonly [string, ...string[]]>> = {
  "push-up": ["KL", "MO"],
  agility: ["BT"],
  vertical: ["RS", "KL"],
  core: ["JW"],
  endurance: ["MO", "AP"],
};

/** How far somebody came on the day, where not to the end: the last test they did, and how that ended. */
export interface Course {
  readonly last: DoneTest;
  readonly ends: "well" | "one direction" | "stopped";
}

/** Everything that was written down about one athlete on the day, in the order of the tests. */
export function writeResults(
  random: () => number,
  person: Person,
  shown: Ability,
  course: Course,
): ResultCells[] {
  const count = doneTests.indexOf(course.last) + 1;
  return doneTests.slice(0, count).flatMap((test) => {
    const rows = writers[test](random, shown[test], person);
    const cut = test === course.last ? cutShort(random, rows, course.ends) : rows;
    const { league, number, name } = person;
    const by = { entered_by: pick(random, keyedBy[test]) };
    return cut.map((row) => ({ league, number, name, test, ...row, ...by }));
  });
}

/** The last test of somebody who left early. */
function cutShort(
  random: () => number,
  rows: readonly ResultCells[],
  ends: Course["ends"],
): readonly ResultCells[] {
  if (ends === "one direction") return rows.slice(0, 1);
  if (ends === "stopped")
    return [{ finished: "no", rounds_done: between(random, 1, 2), note: "stopped at the lunges" }];
  return rows;
}

type Writer = (random: () => number, mark: number, person: Person) => readonly ResultCells[];

const writers: Readonly<Record<DoneTest, Writer>> = {
  "push-up"(random, mark, { variant }) {
    const off = pick(random, [3, 3, 3, 0, 1]);
    return [{ variant, reps: mark + off, missed_at_end: off }];
  },
  /** The two directions lie on both sides of the mark; the second one's touches take up what is left. */
  agility(random, mark) {
    const apart = Math.round(2 * roughlyNormal(random));
    const halves = Math.floor(mark / 2);
    return [
      { direction: "cw", ...trial(random, halves + apart) },
      { direction: "ccw", ...trial(random, halves - apart + (mark % 2)) },
    ];
  },
  /** Three trials on one reach; the best of them is the mark. */
  vertical(random, mark, person) {
    const { unit, steps, write } = tapeOf(person);
    const standing = steps(makeReach(random));
    const best = between(random, 0, 2);
    return [0, 1, 2].map((index) => {
      const height = index === best ? mark : mark * (1 - 0.11 * random());
      return {
        standing_reach: write(standing),
        touch_reach: write(standing + Math.max(0, steps(height))),
        unit,
      };
    });
  },
  core: (_random, mark) => [{ time: clock(1000 * mark, 0) }],
  endurance: (random, mark) => [{ time: clock(mark, pick(random, [1, 2, 2])), finished: "yes" }],
};

/** One trial of so many half landings: laps, quadrants and touches that come to exactly that. */
function trial(random: () => number, halves: number): ResultCells {
  const touches = (halves % 2) + 2 * pick(random, [0, 0, 0, 1]);
  const landings = (halves + touches) / 2;
  return { laps: Math.floor(landings / 4), extra_quadrants: landings % 4, line_touches: touches };
}

/** A mark of an earlier day as its sheet gives it; rounded as the test's own rule rounds. */
export function writePast(person: Person, test: DoneTest, mark: number): ResultCells {
  const { unit, steps, write } = tapeOf(person);
  switch (test) {
    case "push-up":
      return { variant: person.variant, mark, unit: "reps" };
    case "agility":
      return { mark: mark / 4, unit: "landings" };
    case "vertical":
      return { mark: write(steps(mark)), unit };
    case "core":
      return { mark: clock(1000 * mark, 0), unit: "m:ss" };
    case "endurance":
      return { mark: clock(mark, 1), unit: "m:ss.s" };
  }
}
