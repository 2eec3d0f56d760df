/**
 * The content policy of pages: the build's own files and the app's own API, nothing else. Style attributes are refused
 * in HTML; scripts may still set styles through the CSSOM. No text becomes markup or script (Trusted Types).
 */
export const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "media-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
  // The policy of renderer/app/trusted.ts.
  "trusted-types default",
].join("; ");

/** Headers of every answer of the scheme, files and data alike. */
const everyAnswer: Readonly<Record<string, string>> = {
  "content-security-policy": contentSecurityPolicy,
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "cross-origin-resource-policy": "same-origin",
  "permissions-policy":
    "camera=(), geolocation=(), microphone=(), display-capture=(), usb=(), serial=(), hid=(), bluetooth=()",
  // Athletes' names must not stay in a cache.
  "cache-control": "no-store",
};

/** Adds the headers of every answer; returns the same answer. */
export function withSecurityHeaders(response: Response): Response {
  for (const [name, value] of Object.entries(everyAnswer)) response.headers.set(name, value);
  return response;
}
