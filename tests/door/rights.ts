import { readFileSync } from "node:fs";
import { roles } from "../../electron/domain/lock/roles.ts";

/** What a role may do with a procedure; `own`: with what belongs to its own station. */
type Right = "yes" | "own" | "no";

/** Who stands in the table: every role in a window, and devices on the network. */
const columns = [...roles, "device"] as const;
type Rights = Readonly<Record<(typeof columns)[number], Right>>;

/** The table of rights in electron/api/RIGHTS.md: procedure → role → right. Throws for a table that can't be read. */
export function readRights(): ReadonlyMap<string, Rights> {
  const text = readFileSync(new URL("../../electron/api/RIGHTS.md", import.meta.url), "utf8");
  const [head, , ...rows] = text.split("\n").filter((line) => line.startsWith("|"));
  const named = cellsOf(head ?? "").slice(1);
  if (String(named) !== String(columns)) throw new Error(`The roles of the table are ${named.join(", ")}.`);
  const rights = new Map<string, Rights>();
  for (const row of rows) {
    const [procedures = "", ...cells] = cellsOf(row);
    const right = Object.fromEntries(named.map((role, index) => [role, rightOf(cells[index])]));
    for (const [, procedure = ""] of procedures.matchAll(/`([^`]+)`/g)) {
      if (rights.has(procedure)) throw new Error(`${procedure} stands twice in the table of rights.`);
      rights.set(procedure, right as Rights);
    }
  }
  return rights;
}

function cellsOf(line: string): string[] {
  return line
    .split("|")
    .slice(1, -1)
    .map((cell) => cell.trim());
}

function rightOf(cell: string | undefined): Right {
  if (cell === "yes" || cell === "own") return cell;
  if (cell === "–") return "no";
  throw new Error(`The table of rights says ${cell}, which is neither yes, own nor –.`);
}
