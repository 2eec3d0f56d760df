import type { Configuration } from "electron-builder";
import { homepage, installWords, maintainer, menuCategories, menuWords } from "./words.ts";

/** The systems that there is a package for, as Node calls them. */
export type System = "linux" | "darwin" | "win32";

/** The kinds of installer that electron-builder makes for each system; the deb is made by `debian/make.ts`. */
export const installers: Readonly<Record<System, readonly string[]>> = {
  linux: ["AppImage"],
  darwin: ["dmg", "zip"],
  win32: ["nsis"],
};

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

/** What electron-builder is told to make the package for `system`. */
export function configurationOf(parts: PackageParts, system: System): Configuration {
  return {
    appId: "org.tapeline.desk",
    productName: "Tapeline",
    copyright: "Copyright © the Tapeline authors",
    // biome-ignore lint/suspicious/noTemplateCurlyInString: electron-builder fills these in.
    artifactName: "${productName}-${version}-${os}-${arch}.${ext}",
    extraMetadata: { homepage, desktopName: "tapeline.desktop" },
    directories: { output: parts.outputFolder, buildResources: "resources/packaging" },
    electronVersion: parts.electronVersion,
    electronDist: parts.electronFolder,
    // Chromium's own texts in the one language that the program speaks.
    electronLanguages: ["en-US"],
    electronFuses: fusesOn(system),
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
      category: `${menuCategories.join(";")};`,
      synopsis: installWords.en.comment,
      desktop: { entry: menuWords() },
      maintainer,
      syncDesktopName: true,
    },
    mac: { icon: "resources/icons/tapeline.icns", category: "public.app-category.sports" },
    win: { icon: "resources/icons/tapeline.ico" },
    nsis: { oneClick: false, allowToChangeInstallationDirectory: true },
  };
}

/** The switches that are set for good in the packaged program. */
function fusesOn(system: System): NonNullable<Configuration["electronFuses"]> {
  return {
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    onlyLoadAppFromAsar: true,
    // Electron checks the archive of the program against its hash on these two systems alone.
    enableEmbeddedAsarIntegrityValidation: system !== "linux",
    enableCookieEncryption: true,
    grantFileProtocolExtraPrivileges: false,
    // The signature that no longer fits is made anew, or Apple's processors would refuse the program.
    resetAdHocDarwinSignature: system === "darwin",
  };
}
