import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

/** Contributors' pages name files; a file that moves must not leave them behind. */
const root = new URL("../..", import.meta.url).pathname;
const folders = ["electron", "renderer", "resources", "tests"];
const inside = folders.flatMap((folder) =>
  readdirSync(`${root}${folder}`, { recursive: true, encoding: "utf8" }).map((path) => `/${folder}/${path}`),
);
const paths = [
  ...inside,
  ...readdirSync(root).map((name) => `/${name}`),
  ...folders.map((name) => `/${name}`),
];
const pages = ["/README.md", "/DEVELOPERS.md", ...inside.filter((path) => path.endsWith(".md"))];

/** What stands in backquotes and looks like a path of the tree: with a folder, or with the ending of a source file. */
function namedIn(page: string): string[] {
  const quoted = readFileSync(`${root}${page.slice(1)}`, "utf8").matchAll(/`([^`\s]+)`/g);
  return (
    [...quoted]
      .map(([, name = ""]) => name.replace(/\/$/, ""))
      .filter((name) => /^[\w<>*.-]+(?:\/[\w<>*.-]+)*$/.test(name))
      // Made by a build, shown as an example, or in a file that leaves.
      .filter((name) => !/^(?:out|node_modules)\/|long-jump|^(?:codebook|data-dictionary)\.md$/.test(name))
      .filter((name) => /\.(?:tsx?|css|c|md|spec)$/.test(name) || isOfTree(name))
  );
}

function isOfTree(name: string): boolean {
  const [first = "", ...rest] = name.split("/");
  return rest.length > 0 && paths.some((path) => path.endsWith(`/${first}`));
}

/** Whether some path ends with the name; `<code>` and `*` stand for any word, and an ending may be left off. */
function exists(name: string): boolean {
  const words = name.replace(/[.]/g, "\\.").replace(/<\w+>|\*+/g, "[^/]+");
  const wanted = new RegExp(`/${words}(?:\\.test\\.ts|\\.tsx?)?$`, "i");
  return paths.some((path) => wanted.test(path));
}

test("every file that a page for contributors names is there", () => {
  const named = pages.flatMap((page) => namedIn(page).map((name) => ({ page, name })));
  expect(named.length).toBeGreaterThan(150);
  expect(named.filter(({ name }) => !exists(name)).map(({ page, name }) => `${page}: ${name}`)).toEqual([]);
});
