/** Returns why a file could not be written, in the page's terms. */
export function whyNotSaved(error: unknown): "no-space" | "not-allowed" | "failed" {
  const code = (error as NodeJS.ErrnoException | null)?.code ?? "";
  if (["ENOSPC", "EDQUOT", "EFBIG"].includes(code)) return "no-space";
  if (["EACCES", "EPERM", "EROFS"].includes(code)) return "not-allowed";
  return "failed";
}
