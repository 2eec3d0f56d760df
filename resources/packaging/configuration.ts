import type { Configuration } from "electron-builder";

/** What the package is made from. */
export interface PackageParts {
  readonly electronVersion: string;
  /** The folder of an unpacked Electron. */
  readonly electronFolder: string;
  /** SQLite's files, by `placeSqlite`. */
  readonly sqlite: readonly { readonly from: string; readonly to: string; readonly filter: string[] }[];
  /** The folder whose files stand beside the program: its licence and the notices of other people's work. */
  readonly notices: string;
  readonly outputFolder: string;
}

/** What electron-builder is told, for every system; of the systems only the running one's part is used. */
export function configurationOf(parts: PackageParts): Configuration {
  return {
    appId: "org.tapeline.desk",
    productName: "Tapeline",
    copyright: "Copyright © the Tapeline authors",
    // biome-ignore lint/suspicious/noTemplateCurlyInString: electron-builder fills these in.
    artifactName: "${productName}-${version}-${os}-${arch}.${ext}",
    // Packages for systems must name a home and somebody to write to. There is none yet: names that lead nowhere (RFC 2606).
    extraMetadata: { homepage: "https://tapeline.invalid", desktopName: "tapeline.desktop" },
    directories: { output: parts.outputFolder, buildResources: "resources/packaging" },
    electronVersion: parts.electronVersion,
    electronDist: parts.electronFolder,
    // Chromium's own texts in the one language that the program speaks.
    electronLanguages: ["en-US"],
    electronFuses: fuses,
    // No: the modules are chosen here, and none is collected, compiled or fetched while packaging.
    beforeBuild: () => Promise.resolve(false),
    asar: true,
    asarUnpack: ["**/*.node"],
    files: [
      "package.json",
      "out/{main,preload,renderer}/**",
      "!**/*.map",
      "resources/demo/*.csv",
      ...parts.sqlite,
    ],
    extraFiles: [{ from: parts.notices, to: "." }],
    // Nothing is uploaded, and the program looks for no updates.
    publish: null,
    linux: {
      executableName: "tapeline",
      icon: "resources/icons/linux",
      category: "Sports",
      synopsis: "The scoring table of a roller-derby testing day",
      maintainer: "the Tapeline authors <authors@tapeline.invalid>",
      syncDesktopName: true,
    },
    mac: { icon: "resources/icons/tapeline.icns", category: "public.app-category.sports" },
    win: { icon: "resources/icons/tapeline.ico" },
    nsis: { oneClick: false, allowToChangeInstallationDirectory: true },
  };
}

/** Electron checks the archive of the program against its hash on these two systems alone. */
const checksArchive = process.platform === "darwin" || process.platform === "win32";

/** The switches that are set for good in the packaged program. */
const fuses: NonNullable<Configuration["electronFuses"]> = {
  runAsNode: false,
  enableNodeOptionsEnvironmentVariable: false,
  enableNodeCliInspectArguments: false,
  onlyLoadAppFromAsar: true,
  enableEmbeddedAsarIntegrityValidation: checksArchive,
  enableCookieEncryption: true,
  grantFileProtocolExtraPrivileges: false,
  // The signature that no longer fits is made anew, or Apple's processors would refuse the program.
  resetAdHocDarwinSignature: process.platform === "darwin",
};
