import { useTranslation } from "react-i18next";
import { FilesToRead } from "../../parts/layout/FilesToRead.tsx";
import { writeNumber } from "../../words/numbers.ts";
import { ProfilesTable } from "./ProfilesTable.tsx";
import type { Preview } from "./preview.ts";
import { RowsTable } from "./RowsTable.tsx";
import { TestsTable } from "./TestsTable.tsx";
import css from "./WhatLeaves.module.css";

/** Everything that would leave: how the marks lie before and after, row by row, and the files as they are. */
export function WhatLeaves({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  return (
    <>
      <p className="measure">{t("leaves.without")}</p>
      <TestsTable bundle={bundle} />
      <div className={css.part}>
        <h3>{t("leaves.rows")}</h3>
        {bundle.kind === "marks" ? <RowsTable bundle={bundle} /> : <ProfilesTable bundle={bundle} />}
      </div>
      <div className={css.part}>
        <h3>{t("leaves.files")}</h3>
        <FilesInside bundle={bundle} />
      </div>
    </>
  );
}

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
function FilesInside({ bundle }: { readonly bundle: Preview }) {
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
