import { seededChance } from "../../electron/domain/chance.ts";
import {
  changeSince,
  fieldGroupsOf,
  lookUp,
  placesOf,
  readEarlier,
} from "../../electron/domain/reference-table/look-up.ts";
import { defaultParameters, type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { largeTable } from "../unit/reference/large-table.ts";

/** What somebody types of one test: its fields in order, and the last result. */
export interface TypedOnce {
  readonly test: TestCode;
  readonly fields: readonly string[];
  readonly earlier: string;
}

/** What the page shows of it: each band's ends, and the verdict. */
export interface ShownOnce {
  readonly places: readonly string[];
  readonly verdict: string | null;
}

export const who = { category: "women", ageBand: "30 to 34" } as const;

const random = seededChance([7, 1, 4, 9]);
const upTo = (most: number) => Math.floor(random() * most);
const clock = (seconds: number) => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;

/** Ways to type each test, mostly sound, some not. */
const ways: Readonly<Record<TestCode, () => Omit<TypedOnce, "test">>> = {
  "push-up": () => ({ fields: [`${upTo(90)}`, `${upTo(5)}`], earlier: `${1 + upTo(60)}` }),
  agility: () => ({
    fields: [upTo(12), upTo(5), upTo(4), upTo(12), upTo(4), upTo(4)].map(String),
    earlier: `${10 + upTo(40)}.25`,
  }),
  vertical: () => ({
    fields: [`${200 + upTo(50)}`, `${230 + upTo(90)}.5`, upTo(2) === 0 ? "" : `${230 + upTo(70)},5`, ""],
    earlier: `${10 + upTo(60)}`,
  }),
  core: () => ({ fields: [clock(20 + upTo(400))], earlier: clock(20 + upTo(300)) }),
  endurance: () => ({ fields: [`${clock(200 + upTo(400))}.${upTo(100)}`], earlier: `${200 + upTo(400)} s` }),
};

export function typedOnce(at: number): TypedOnce {
  const test = testCodes[at % testCodes.length] ?? "core";
  return { test, ...ways[test]() };
}

/** The same by the program's own functions, without the page. */
export function expectedOf({ test, fields, earlier }: TypedOnce): ShownOnce {
  const parameters = defaultParameters(test);
  const chosen: Record<string, string> =
    test === "push-up" ? { variant: "full" } : test === "endurance" ? { finished: "yes" } : {};
  const groups = fieldGroupsOf(test, parameters, chosen);
  const left = [...fields];
  const typed = Object.fromEntries(
    groups.map((group) => [
      group.name,
      { ...chosen, ...Object.fromEntries(group.fields.map(({ name }) => [name, left.shift() ?? ""])) },
    ]),
  );
  const came = lookUp(test, parameters, groups, typed, "cm");
  if (came.state !== "read" || came.mark.state !== "complete") return { places: [], verdict: null };
  const { value } = came.mark;
  const all = largeTable.groups.filter((group) => group.test === test);
  const { places } = placesOf(all, test, chosen.variant ?? "", value, who);
  const before = readEarlier(test, parameters, earlier, "cm");
  const news =
    before !== null && "value" in before ? changeSince(test, before.value, value, "2026-01-01") : null;
  return {
    places: places.flatMap(({ place }) =>
      place === null ? [] : [`${place.n} ${place.low} ${place.high - place.low}`],
    ),
    verdict: news === null || news.change === 0 ? null : news.verdict,
  };
}

/** Types it all into the page, one after another, and reads what it shows; runs in the browser, in one go. */
export async function typeAll(all: readonly TypedOnce[]): Promise<ShownOnce[]> {
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
  const shown: ShownOnce[] = [];
  for (const { test, fields, earlier } of all) {
    const item = document.querySelector(`li[data-test="${test}"]`);
    const inputs = item?.querySelectorAll<HTMLInputElement>("input:not([type=radio])") ?? [];
    [...inputs].forEach((input, index) => {
      set?.call(input, index === inputs.length - 1 ? earlier : (fields[index] ?? ""));
      input.dispatchEvent(new Event("input", { bubbles: true }));
    });
    await new Promise((resolve) => setTimeout(resolve, 0));
    await new Promise((resolve) => setTimeout(resolve, 0));
    const places = [...(item?.querySelectorAll("li[data-of]") ?? [])].map((place) => {
      const [marks = ""] = /[\d,]+(?= results)/.exec(place.textContent ?? "") ?? [];
      const band = place.querySelector("rect");
      return `${marks.replaceAll(",", "")} ${band?.getAttribute("x")} ${band?.getAttribute("width")}`;
    });
    const verdict = item?.querySelector("[data-verdict]")?.getAttribute("data-verdict") ?? null;
    shown.push({ places, verdict });
  }
  return shown;
}
