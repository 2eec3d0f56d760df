import { closeSync, lstatSync, openSync, readdirSync, readFileSync, readSync } from "node:fs";
import { join, relative } from "node:path";
import { run } from "../../electron/runtime/host.ts";

/** One entry of a package, as `dpkg-deb --contents` lists it. */
interface DebFile {
  /** As `ls -l` writes it. */
  readonly mode: string;
  readonly owner: string;
  readonly size: number;
  /** What a link points to. */
  readonly target: string | undefined;
}

/** A package as dpkg-deb reads it. */
export interface Deb {
  readonly fields: Readonly<Record<string, string>>;
  /** By the path from the root. */
  readonly files: ReadonlyMap<string, DebFile>;
  /** The text of a file, by its path from the root. */
  readonly read: (name: string) => string;
  /** Which files name one of these paths: all that is no machine code and no picture is looked through. */
  readonly pathsOf: (paths: readonly string[]) => string[];
}

/** Reads a package with dpkg-deb, which unpacks it below `folder`. */
export async function readDeb(file: string, folder: string): Promise<Deb> {
  const unpacked = join(folder, "unpacked");
  await run("dpkg-deb", ["--raw-extract", file, unpacked]);
  const control = await run("dpkg-deb", ["--field", file]);
  const fields = [...control.matchAll(/^([\w-]+): (.*)$/gm)].map(([, name = "", value = ""]) => [
    name,
    value,
  ]);
  return {
    fields: Object.fromEntries(fields) as Record<string, string>,
    files: new Map((await run("dpkg-deb", ["--contents", file])).trimEnd().split("\n").map(listed)),
    read: (name) => readFileSync(join(unpacked, name), "utf8"),
    pathsOf: (paths) => filesNaming(paths, unpacked),
  };
}

function listed(line: string): [string, DebFile] {
  const parts = /^(\S+) (\S+) +(\d+) \S+ \S+ \.(\/.*?)(?: -> (.*))?$/.exec(line);
  if (parts === null) throw new Error(`dpkg-deb listed what can't be read: ${line}`);
  const [, mode = "", owner = "", size, name = "", target] = parts;
  return [name.replace(/(?<=.)\/$/, ""), { mode, owner, size: Number(size), target }];
}

function filesNaming(paths: readonly string[], unpacked: string): string[] {
  const files = readdirSync(unpacked, { recursive: true, encoding: "utf8" }).map((name) =>
    join(unpacked, name),
  );
  const ours = files.filter(
    (name) => lstatSync(name).isFile() && !isCode(name) && !/\.(?:png|pak|dat|bin)$/.test(name),
  );
  return ours
    .filter((name) => paths.some((path) => readFileSync(name).includes(path)))
    .map((name) => relative(unpacked, name));
}

/** Whether it is machine code: an ELF file, by its first four bytes. */
function isCode(name: string): boolean {
  const start = Buffer.alloc(4);
  const file = openSync(name, "r");
  readSync(file, start);
  closeSync(file);
  return start.toString("latin1") === "\x7fELF";
}

/** The libraries that any of the files is linked to, by the names that the system looks for (ELF's DT_NEEDED). */
export async function linkedLibraries(files: readonly string[]): Promise<ReadonlySet<string>> {
  const code = files.filter((name) => lstatSync(name).isFile() && isCode(name));
  const headers = await run("objdump", ["--private-headers", ...code]);
  return new Set([...headers.matchAll(/^ +NEEDED +(\S+)$/gm)].map(([, name = ""]) => name));
}
