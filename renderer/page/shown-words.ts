/** What the page for everybody shows of each word file: its groups by name; a file that is not here it has whole. */
const ofTest =
  "name ability station letter rules better summary summary_one summary_other asks asks_one asks_other sheet field choice drawing part counted exercise".split(
    " ",
  );
const shown: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries(
    ["agility", "core", "endurance", "push-up", "vertical"].map((test) => [test, ofTest]),
  ),
  common: ["name", "frame", "variant", "unit", "counted", "paper"],
  instructions: ["sheet", "head", "foot", "drawing", "athlete", "help"],
  place: ["anywhere", "wide", "band", "bottom", "top", "end"],
  sentences: ["plausibility", "units", "marks", "stages", "test"],
  station: ["change", "verdict"],
};

/** Returns a word file's text with what the page shows of it. */
export function shownOf(name: string, text: string): string {
  const groups = shown[name];
  if (groups === undefined) return text;
  const words = JSON.parse(text) as Record<string, unknown>;
  return JSON.stringify(
    Object.fromEntries(Object.entries(words).filter(([group]) => groups.includes(group))),
  );
}
