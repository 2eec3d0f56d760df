/**
 * The libraries of the system that Electron and SQLite's addon are linked to, each with the Debian package that carries
 * it: as Debian 12 calls that package and, where Debian 13 and Ubuntu 24.04 renamed it for 64-bit time, as they do.
 * Seen on Debian 12 and 13 (`dpkg -S`).
 */
export const libraries: Readonly<Record<string, string>> = {
  "ld-linux-aarch64.so.1": "libc6",
  "ld-linux-x86-64.so.2": "libc6",
  "libX11.so.6": "libx11-6",
  "libXcomposite.so.1": "libxcomposite1",
  "libXdamage.so.1": "libxdamage1",
  "libXext.so.6": "libxext6",
  "libXfixes.so.3": "libxfixes3",
  "libXrandr.so.2": "libxrandr2",
  "libasound.so.2": "libasound2 | libasound2t64",
  "libatk-1.0.so.0": "libatk1.0-0 | libatk1.0-0t64",
  "libatk-bridge-2.0.so.0": "libatk-bridge2.0-0 | libatk-bridge2.0-0t64",
  "libatspi.so.0": "libatspi2.0-0 | libatspi2.0-0t64",
  "libc.so.6": "libc6",
  "libcairo.so.2": "libcairo2",
  "libcups.so.2": "libcups2 | libcups2t64",
  "libdbus-1.so.3": "libdbus-1-3",
  "libdl.so.2": "libc6",
  "libdrm.so.2": "libdrm2",
  "libexpat.so.1": "libexpat1",
  "libgbm.so.1": "libgbm1",
  "libgcc_s.so.1": "libgcc-s1",
  "libgio-2.0.so.0": "libglib2.0-0 | libglib2.0-0t64",
  "libglib-2.0.so.0": "libglib2.0-0 | libglib2.0-0t64",
  "libgobject-2.0.so.0": "libglib2.0-0 | libglib2.0-0t64",
  "libgtk-3.so.0": "libgtk-3-0 | libgtk-3-0t64",
  "libm.so.6": "libc6",
  "libnspr4.so": "libnspr4",
  "libnss3.so": "libnss3",
  "libnssutil3.so": "libnss3",
  "libpango-1.0.so.0": "libpango-1.0-0",
  "libpthread.so.0": "libc6",
  "libsmime3.so": "libnss3",
  "libstdc++.so.6": "libstdc++6",
  "libudev.so.1": "libudev1",
  "libxcb.so.1": "libxcb1",
  "libxkbcommon.so.0": "libxkbcommon0",
};

/** The packages that a package of the program depends on: each once, in the order of their names. */
export function neededPackages(): string[] {
  return [...new Set(Object.values(libraries))].sort();
}

/** What Chromium looks for when it starts and does without: there it draws with the processor alone. */
export const usefulPackages = ["libegl1", "libgl1"];
