import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/tests/registry.ts";

type AnyKeys = (keys: readonly string[]) => string;

/** Returns the name of a sheet's column: a common one, or one that a test needs. */
export function useFieldName(): (field: string) => string {
  const { t } = useTranslation();
  const any = t as unknown as AnyKeys;
  return (field) => any([`sheets:field.${field}`, ...testCodes.map((code) => `${code}:column.${field}`)]);
}
