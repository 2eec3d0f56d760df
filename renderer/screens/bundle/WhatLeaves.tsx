import { useTranslation } from "react-i18next";
import { FilesInside } from "./FilesInside.tsx";
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
      <p className={css.words}>{t("leaves.without")}</p>
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
