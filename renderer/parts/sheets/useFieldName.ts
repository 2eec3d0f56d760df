import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/tests/registry.ts";

type AnyKeys = (keys: readonly string[], options: { readonly defaultValue: string }) => string;

/** Returns the name of a sheet's column: every sheet's own, one that a test needs, or the sheet's own header. */
export function useFieldName(): (field: string) => string {
  const { t } = useTranslation();
  const any = t as unknown as AnyKeys;
  return (field) =>
    any([`sheets:field.${field}`, ...testCodes.map((code) => `${code}:column.${field}`)], {
      defaultValue: field,
    });
}
