import { useTranslation } from "react-i18next";
import css from "./FilesInside.module.css";
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
  return (
    <ul className={css.files}>
      {bundle.files.map(({ name, bytes, text }) => {
        const known = told.find((candidate) => candidate === name);
        const size = t("count.bytes", { count: bytes, shown: bytes.toLocaleString(i18n.language) });
        return (
          <li key={name}>
            <details>
              <summary className={css.summary}>
                <span className={css.name}>{name}</span>
                <span className={css.what}>{known !== undefined && t(`leaves.file.${known}`)}</span>
                <span className={css.size}>{size}</span>
              </summary>
              {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
              <pre className={css.text} tabIndex={0}>
                {text}
              </pre>
            </details>
          </li>
        );
      })}
    </ul>
  );
}
