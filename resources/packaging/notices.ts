import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { projectFolder } from "../../electron/runtime/host.ts";

/** One package that the program is built from. */
export interface Part {
  readonly name: string;
  readonly version: string;
  /** An SPDX expression, as its package.json says. */
  readonly licence: string;
  /** What its licence and notice files say, in the order of their names. */
  readonly texts: readonly string[];
}

interface Locked {
  readonly dev?: boolean;
  readonly optional?: boolean;
}

/**
 * Every package that the program is built from, by the lock file, in the order of their names: nothing of the day or
 * of the machine gets in, so the same lock gives the same list.
 * @throws Error when a package says neither in package.json nor in a file under which terms it may be passed on.
 */
export function partsOfProgram(): Part[] {
  const lock = JSON.parse(readFileSync(join(projectFolder, "package-lock.json"), "utf8")) as {
    packages: Record<string, Locked>;
  };
  const folders = Object.entries(lock.packages)
    .filter(([folder, { dev, optional }]) => folder !== "" && dev !== true && optional !== true)
    .map(([folder]) => folder);
  const parts = new Map(folders.map(partIn).map((part) => [`${part.name}@${part.version}`, part]));
  return [...parts.entries()].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, part]) => part);
}

function partIn(folder: string): Part {
  const path = join(projectFolder, folder);
  const { name, version, license, licenses } = JSON.parse(
    readFileSync(join(path, "package.json"), "utf8"),
  ) as {
    name: string;
    version: string;
    license?: string;
    /** An older way to say it. */
    licenses?: readonly { readonly type: string }[];
  };
  const texts = readdirSync(path)
    .filter((file) => /^(licen[cs]e|copying|notice)(?![a-z])/i.test(file) && !/\.(js|ts|json)$/i.test(file))
    .sort()
    .map((file) => readFileSync(join(path, file), "utf8").replaceAll("\r\n", "\n").trim());
  const licence = license ?? licenses?.map(({ type }) => type).join(" OR ") ?? "";
  if (licence === "" && texts.length === 0)
    throw new Error(`${name} ${version} does not say what its licence is.`);
  return { name, version, licence: licence === "" ? "see its text" : licence, texts };
}

/** The list for people: a table of contents, then each package's own words. */
export function noticesText(parts: readonly Part[], version: string): string {
  const contents = parts.map(({ name, version: own, licence }) => `${name} ${own}: ${licence}`);
  const chapters = parts.map(({ name, version: own, licence, texts }) =>
    [`${"=".repeat(80)}\n${name} ${own} (${licence})`, ...(texts.length > 0 ? texts : [withoutText])].join(
      "\n\n",
    ),
  );
  return `${[
    `Tapeline ${version} is built from the work of others. These packages are part of the program:`,
    contents.join("\n"),
    "Electron and Chromium, which it runs on, have their own: LICENSE.electron.txt and LICENSES.chromium.html.",
    ...chapters,
  ].join("\n\n")}\n`;
}

const withoutText = "The package carries no text of its licence; it is the one that its name stands for.";
