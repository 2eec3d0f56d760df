import type { WordFiles } from "./word-files.ts";
import "i18next";

/** Makes every key of `t()` checked against the English word files. */
declare module "i18next" {
  interface CustomTypeOptions {
    defaultNS: "common";
    resources: WordFiles;
  }
}
