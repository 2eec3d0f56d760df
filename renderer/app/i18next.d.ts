import type common from "../../resources/locales/en/common.json";
import type home from "../../resources/locales/en/home.json";
import "i18next";

/** Makes every key of `t()` checked against the English word files: one line here for each file. */
declare module "i18next" {
  interface CustomTypeOptions {
    defaultNS: "common";
    resources: {
      common: typeof common;
      home: typeof home;
    };
  }
}
