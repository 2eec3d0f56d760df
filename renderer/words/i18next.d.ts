import type { WordFiles } from "./word-files.ts";
import "i18next";

/** Checks every key of `t()` against the English word files. */
declare module "i18next" {
  interface CustomTypeOptions {
    defaultNS: "common";
    resources: WordFiles;
  }
}
