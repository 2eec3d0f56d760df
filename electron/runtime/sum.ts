import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";

/**
 * Returns a hash over names and contents of all files in folders of a root and below, and of single files there: another
 * one whenever any of them is changed, added, renamed or gone. A folder that is missing has none.
 */
export async function sumOf(
  root: string,
  folders: readonly string[],
  single: readonly string[] = [],
): Promise<string> {
  const found = await Promise.all(folders.map((folder) => filesIn(root, folder)));
  const files = [...single, ...found.flat().sort()];
  const contents = await Promise.all(files.map((file) => readFile(join(root, file))));
  const hash = createHash("sha256");
  for (const [index, content] of contents.entries())
    hash.update(`${files[index]}\0${content.length}\0`).update(content);
  return hash.digest("hex");
}

async function filesIn(root: string, folder: string): Promise<string[]> {
  if (!existsSync(join(root, folder))) return [];
  const entries = await readdir(join(root, folder), { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1));
}
