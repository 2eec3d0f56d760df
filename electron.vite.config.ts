import react from "@vitejs/plugin-react";
import { defineConfig } from "electron-vite";

/** The oldest Electron that the app runs on is 33: Node 20.18 and Chromium 130. */
const oldest = { node: "node20.18", chromium: "chrome130" };

export default defineConfig({
  main: {
    build: {
      target: oldest.node,
      sourcemap: true,
      // One file with all that it uses, so that the package needs no folder of modules. SQLite has a native part.
      externalizeDeps: false,
      rolldownOptions: {
        // Each thread is a file of its own, beside the program's.
        input: {
          main: "electron/main.ts",
          "backup-thread": "electron/host/backup-thread.ts",
          "calculator-thread": "electron/host/calculator-thread.ts",
          "store-thread": "electron/host/store-thread.ts",
        },
        external: ["better-sqlite3"],
      },
    },
  },
  preload: {
    build: {
      target: oldest.node,
      // A preload script in the sandbox has to be CommonJS, in one file.
      lib: { entry: { preload: "electron/shell/bridge/preload.ts" }, formats: ["cjs"] },
      rolldownOptions: { output: { entryFileNames: "[name].cjs" } },
    },
  },
  renderer: {
    root: "renderer",
    plugins: [react()],
    build: {
      target: oldest.chromium,
      sourcemap: true,
      minify: true,
      // The content policy allows no script in the page and no file written into another as data.
      assetsInlineLimit: 0,
      // In kB: read from the disk beside it, so that one large file is no slower than many small ones.
      chunkSizeWarningLimit: 2_000,
      modulePreload: { polyfill: false },
      // The second page is for devices that have not joined yet.
      rolldownOptions: { input: { index: "renderer/index.html", join: "renderer/join.html" } },
    },
  },
});
