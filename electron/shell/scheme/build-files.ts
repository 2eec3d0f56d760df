import { readdir, readFile } from "node:fs/promises";
import { extname, join, relative, sep } from "node:path";

/** A file that the app may serve. */
interface BuildFile {
  readonly contentType: string;
  read(): Promise<Uint8Array<ArrayBuffer>>;
}

/** The files of the build by URL path, as a URL writes it: `/assets/boot-x.js`. `/` is the page itself. */
export type BuildFiles = ReadonlyMap<string, BuildFile>;

const contentTypes: Readonly<Record<string, string>> = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".map": "application/json; charset=utf-8",
  ".mp3": "audio/mpeg",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wav": "audio/wav",
  ".webp": "image/webp",
  ".woff2": "font/woff2",
};

/**
 * Lists the files of the build once. Requests are looked up in this list, so no path, however spelled, can lead out of
 * the folder. Links are left out: they could.
 */
export async function listBuildFiles(folder: string): Promise<BuildFiles> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = new Map<string, BuildFile>();
  for (const entry of entries) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    files.set(urlPath(relative(folder, file)), buildFile(file));
  }
  const page = files.get("/index.html");
  if (page === undefined) throw new Error(`There is no page in ${folder}. Build the app first.`);
  return files.set("/", page);
}

function urlPath(relativePath: string): string {
  return `/${relativePath.split(sep).map(encodeURIComponent).join("/")}`;
}

function buildFile(file: string): BuildFile {
  const contentType = contentTypes[extname(file).toLowerCase()] ?? "application/octet-stream";
  return { contentType, read: async () => new Uint8Array(await readFile(file)) };
}
