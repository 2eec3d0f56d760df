import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

/**
 * Rules that ask what is inside something (`:has()`, Selectors Level 4). Chromium keeps one list for all of a page's: which
 * elements such a rule may change. A rule that names none, as `.screen:has(form) > *` does, puts everything into it, and the
 * style of the whole page was worked out anew at each entry: 600 elements, three times.
 */

const renderer = join(import.meta.dirname, "../../../renderer");

/** Every selector of every stylesheet, `file: selector`. */
function selectors(): string[] {
  return readdirSync(renderer, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".css"))
    .flatMap((file) => {
      const text = readFileSync(join(renderer, file), "utf8")
        .replaceAll(/\/\*[\s\S]*?\*\//g, "")
        // A class of all sheets, as CSS modules write it.
        .replaceAll(/:global\(([^()]*)\)/g, "$1");
      const preludes = [...text.matchAll(/([^{};]+)\{/g)].map(([, prelude = ""]) => prelude.trim());
      return preludes
        .filter((prelude) => !prelude.startsWith("@"))
        .flatMap(split(","))
        .map((selector) => `${file}: ${selector}`);
    });
}

/** Splits text at these characters, but not inside brackets. */
function split(at: string): (text: string) => string[] {
  return (text) => {
    const parts = [""];
    let depth = 0;
    for (const each of text) {
      if ("([".includes(each)) depth += 1;
      if (")]".includes(each)) depth -= 1;
      if (depth === 0 && at.includes(each)) parts.push("");
      else parts[parts.length - 1] += each;
    }
    return parts.map((part) => part.trim()).filter((part) => part !== "");
  };
}

/** True for a part of a selector that says by class, id, attribute or name which elements it is about. */
function namesSomething(compound: string): boolean {
  let own = compound;
  // From the innermost bracket outwards, and then what had them.
  while (/\([^()]*\)/.test(own)) own = own.replaceAll(/::?[\w-]+\([^()]*\)|\([^()]*\)/g, "");
  return /[.#[]|^[a-z]/i.test(own);
}

const asking = selectors().filter((selector) => selector.includes(":has("));

test("a rule that asks what is inside something says what it changes", () => {
  expect(asking.length).toBeGreaterThan(30);
  const unnamed = asking.filter((selector) => {
    const [, rule = ""] = selector.split(/: (.*)/s);
    return !namesSomething(split(" >+~\n")(rule).at(-1) ?? "");
  });
  expect(unnamed).toEqual([]);
});

test("a rule that asks what is inside something says of what it asks", () => {
  const unnamed = asking.filter((selector) => {
    const [, rule = ""] = selector.split(/: (.*)/s);
    return split(" >+~\n")(rule).some((compound) => compound.includes(":has(") && !namesSomething(compound));
  });
  expect(unnamed).toEqual([]);
});
