import { homepage, installWords, maintainer } from "../words.ts";
import { neededPackages, usefulPackages } from "./libraries.ts";

/** What `dpkg --print-architecture` says where Node says this. */
const architectures: Readonly<Record<string, string>> = { x64: "amd64", arm64: "arm64" };

/**
 * The architecture of this machine by Debian's name.
 * @throws Error where Electron exists for no Debian of that kind.
 */
export function debianArchitecture(): string {
  const name = architectures[process.arch];
  if (name === undefined) throw new Error(`No deb: Debian has no name here for ${process.arch}.`);
  return name;
}

/** A version as Debian orders it: `1.0.0-beta.1` comes before `1.0.0` only as `1.0.0~beta.1`. */
export function debianVersion(version: string): string {
  return version.replace("-", "~");
}

/** What a package says of itself, and how large it is, in KiB. */
export interface ControlFields {
  readonly version: string;
  readonly installedSize: number;
}

/** The control file of the package. Source: Debian Policy 5.3 (binary packages) and 5.6 (the fields). */
export function controlText({ version, installedSize }: ControlFields): string {
  const { comment, about, data } = installWords.en;
  const fields = {
    Package: "tapeline",
    Version: debianVersion(version),
    Architecture: debianArchitecture(),
    Maintainer: maintainer,
    "Installed-Size": installedSize,
    Depends: neededPackages().join(", "),
    Recommends: usefulPackages.join(", "),
    Section: "misc",
    Priority: "optional",
    Homepage: homepage,
    Description: [comment, ...paragraph(about), " .", ...paragraph(data)].join("\n"),
  };
  return Object.entries(fields)
    .map(([name, value]) => `${name}: ${value}\n`)
    .join("");
}

/** Lines of at most 79 characters are shown whole on a terminal; each begins with a space (Policy 5.6.13). */
function paragraph(text: string): string[] {
  return text.match(/\S.{0,76}\S(?=\s|$)/g)?.map((line) => ` ${line}`) ?? [];
}
