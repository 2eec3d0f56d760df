import { globSync, readFileSync } from "node:fs";
import { parseSync } from "vite";
import { expect, test } from "vitest";

/**
 * What people read stands in the word files. This walks the syntax of every screen: text between tags, and attributes
 * that are read aloud or shown, may have no letters, in whatever expression they stand.
 */
const root = new URL("../../", import.meta.url).pathname;

/** Attributes of elements, and of this program's own parts, whose text people see or hear. */
const shown = new Set(
  "aria-label aria-description aria-placeholder aria-roledescription aria-valuetext alt title placeholder label lead help does caption note text message cancel confirm".split(
    " ",
  ),
);

/** Signs with letters that are the same in every language: units, keys on a keyboard. */
const allowed = new Set(["s", "kg", "cm", "Alt", "Enter", "Shift", "Esc", "Space", "Backspace", "Tab"]);

interface Node {
  readonly type: string;
  readonly [key: string]: unknown;
}

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && "type" in value && typeof value.type === "string";
}

function childrenOf(node: Node): Node[] {
  return Object.values(node)
    .flatMap((value) => (Array.isArray(value) ? value : [value]))
    .filter(isNode);
}

/** The texts that an expression may come to: `a ? "x" : "y"`, `a && "x"`, `"x" + y`, `x ${y}`; not what is in calls. */
function textsOf(node: Node): string[] {
  if (node.type === "Literal") return typeof node.value === "string" ? [node.value] : [];
  if (node.type === "TemplateLiteral") {
    const parts = (node.quasis as { value: { cooked: string } }[]).map(({ value }) => value.cooked);
    return [...parts, ...(node.expressions as Node[]).flatMap(textsOf)];
  }
  if (node.type === "ConditionalExpression")
    return [...textsOf(node.consequent as Node), ...textsOf(node.alternate as Node)];
  if (node.type === "LogicalExpression" || node.type === "BinaryExpression") {
    const comparison = node.type === "BinaryExpression" && node.operator !== "+";
    return comparison ? [] : [...textsOf(node.left as Node), ...textsOf(node.right as Node)];
  }
  return node.type === "JSXExpressionContainer" ? textsOf(node.expression as Node) : [];
}

function shownIn(node: Node): string[] {
  if (node.type === "JSXText") return [String(node.value)];
  if (node.type === "JSXElement" || node.type === "JSXFragment") {
    const children = node.children as Node[];
    return children.filter(({ type }) => type === "JSXExpressionContainer").flatMap(textsOf);
  }
  if (node.type !== "JSXAttribute" || !isNode(node.value)) return [];
  return shown.has(String((node.name as Node).name)) ? textsOf(node.value) : [];
}

/** Every text with letters that a piece of code shows. */
function textIn(name: string, code: string): string[] {
  const found: string[] = [];
  function walk(node: Node): void {
    const texts = shownIn(node).map((text) => text.trim());
    found.push(...texts.filter((text) => /\p{L}/u.test(text) && !allowed.has(text)));
    for (const child of childrenOf(node)) walk(child);
  }
  const { program, errors } = parseSync(name, code);
  if (errors.length > 0) throw new Error(`${name} can't be read.`);
  walk(program as unknown as Node);
  return found;
}

test("no text stands in code", () => {
  const files = globSync("renderer/**/*.tsx", { cwd: root });
  expect(files.length).toBeGreaterThan(100);
  const found = files.flatMap((file) =>
    textIn(file, readFileSync(root + file, "utf8")).map((text) => `${file}: ${text}`),
  );
  expect(found).toEqual([]);
});

test.each([
  ["<p>Hello {name}</p>", ["Hello"]],
  ["<p>{open ? 'Open' : 'Closed'}</p>", ["Open", "Closed"]],
  [`<p>{many && \`\${many} rows\`}</p>`, ["rows"]],
  ['<button aria-label="Close" />', ["Close"]],
  ["<input placeholder={'Type ' + what} />", ["Type"]],
  [`<Panel title={\`Day \${number}\`} />`, ["Day"]],
  ['<p className="Loud" data-state="Open">{t("a.b")} – {count} × {x === "Open" ? 1 : 2}</p>', []],
])("of %s it sees %j", (code, seen) => {
  expect(textIn("some.tsx", `const some = ${code};`)).toEqual(seen);
});
