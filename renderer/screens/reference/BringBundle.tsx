import { useTranslation } from "react-i18next";
import { FileZone } from "../../parts/FileZone.tsx";
import { type BundleInHand, tooBig } from "./useBundle.ts";

/** Where a bundle is chosen or dropped. */
export function BringBundle({ bundle }: { readonly bundle: BundleInHand }) {
  const { t } = useTranslation("reference");
  const unreadable = { key: "reference:choose.unreadable" };
  return (
    <FileZone
      title={t("choose.drop")}
      button={t("choose.button")}
      note={t("choose.note")}
      accept=".zip,application/zip"
      onFile={bundle.bring}
      onRefused={(name, why) => bundle.refuse(name, why === "too-big" ? tooBig : unreadable)}
    />
  );
}
