import { useTranslation } from "react-i18next";
import { writeNumber } from "../../app/numbers.ts";
import { FilesToRead } from "../../parts/FilesToRead.tsx";
import type { Preview } from "./preview.ts";

const told = [
  "datapackage.json",
  "marks.csv",
  "profiles.csv",
  "summary.csv",
  "protocols.json",
  "codebook.md",
  "privacy.json",
] as const;

/** The files of the zip; each opens to be read as it would leave. */
export function FilesInside({ bundle }: { readonly bundle: Preview }) {
  const { t, i18n } = useTranslation("bundle");
  const files = bundle.files.map(({ name, bytes, text }) => {
    const known = told.find((candidate) => candidate === name);
    return {
      name,
      text,
      what: known === undefined ? "" : t(`leaves.file.${known}`),
      size: t("count.bytes", { count: bytes, shown: writeNumber(bytes, i18n.language) }),
    };
  });
  return <FilesToRead files={files} />;
}
