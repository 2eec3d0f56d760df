import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { shownOf } from "./shown-words.ts";

/*
 * Builds the page for everybody into one file: a page that is opened from a disk can load nothing by an address, and
 * whoever passes it on passes on one file. Its own libraries are small ones, since all of it is carried along.
 */

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Puts script and style into the page, under a policy that names them by their hashes and lets nothing else in or out. */
function inOneFile(): Plugin {
  return {
    name: "in-one-file",
    enforce: "post",
    generateBundle(_options, bundle) {
      const page = bundle["index.html"];
      if (page?.type !== "asset") throw new Error("The page was not built.");
      let script = "";
      let style = "";
      for (const [name, file] of Object.entries(bundle)) {
        if (file === page) continue;
        if (file.type === "chunk") script += file.code;
        else if (name.endsWith(".css")) style += file.source;
        else throw new Error(`The page would load ${name}.`);
        delete bundle[name];
      }
      page.source = withInside(String(page.source), script, style);
    },
  };
}

function withInside(html: string, code: string, style: string): string {
  // The text of a script ends at what looks like its end, wherever that stands.
  const script = code.trim().replaceAll("</script", "<\\/script");
  const policy = [
    "default-src 'none'",
    `script-src '${hashOf(script)}'`,
    `style-src '${hashOf(style)}'`,
    "img-src data:",
    "connect-src 'none'",
    "form-action 'none'",
    "base-uri 'none'",
  ].join("; ");
  return html
    .replace(/\s*<script type="module"[^>]*><\/script>/, "")
    .replace(/\s*<link rel="stylesheet"[^>]*>/g, "")
    .replace(
      /(<meta charset="utf-8" \/>)/,
      (charset) => `${charset}\n    <meta http-equiv="Content-Security-Policy" content="${policy}" />`,
    )
    .replace("</head>", () => `<style>${style}</style>\n  </head>`)
    .replace("</body>", () => `<script type="module">${script}</script>\n  </body>`);
}

function hashOf(text: string): string {
  return `sha256-${createHash("sha256").update(text).digest("base64")}`;
}

/** Leaves of the word files what the page shows. */
function fewerWords(): Plugin {
  return {
    name: "fewer-words",
    enforce: "pre",
    load(id) {
      const [, name] = /\/resources\/locales\/\w+\/([\w-]+)\.json$/.exec(id) ?? [];
      return name === undefined ? null : shownOf(name, readFileSync(id, "utf8"));
    },
  };
}

export default defineConfig({
  root: here("."),
  plugins: [fewerWords(), react(), inOneFile()],
  resolve: {
    alias: [
      { find: /^react-dom\/client$/, replacement: "preact/compat/client" },
      { find: /^react-dom$/, replacement: "preact/compat" },
      { find: /^react\/jsx-runtime$/, replacement: "preact/jsx-runtime" },
      { find: /^react$/, replacement: "preact/compat" },
      { find: /^(react-)?i18next$/, replacement: here("./light/texts.ts") },
      { find: /^react-aria-components\/.*$/, replacement: here("./light/controls.tsx") },
      // A typeface would be two thirds of the page: the system's own has to do.
      { find: /^@fontsource-variable\/.*$/, replacement: here("./light/no-typeface.css") },
    ],
  },
  build: {
    target: ["chrome120", "firefox121", "safari17"],
    outDir: here("../../out/page"),
    emptyOutDir: true,
    assetsInlineLimit: 0,
    cssCodeSplit: false,
    modulePreload: false,
    rolldownOptions: {
      // What a file does when it is loaded is nothing, but for the page itself: what nobody uses of it is left out.
      treeshake: { moduleSideEffects: (id) => /\.css$|\.html|\/page\/start\.tsx$/.test(id) },
    },
  },
});
