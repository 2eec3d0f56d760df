import { useTranslation } from "react-i18next";

const variants = ["full", "knee"] as const;
const categories = ["women", "men", "open", "unknown"] as const;

/** A variant in words; one that nobody has words for stays as it is. */
export function useVariant(): (variant: string) => string {
  const { t } = useTranslation("bundle");
  return (variant) => {
    const known = variants.find((candidate) => candidate === variant);
    return known === undefined ? variant : t(`variant.${known}`);
  };
}

export function useCategory(): (category: string) => string {
  const { t } = useTranslation("bundle");
  return (category) => {
    const known = categories.find((candidate) => candidate === category);
    return known === undefined ? category : t(`category.${known}`);
  };
}
