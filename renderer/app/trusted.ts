import { z } from "zod";

/** The part of the Trusted Types standard in use here; the compiler's own types lack it. */
interface TrustedTypes {
  createPolicy(
    name: string,
    rules: Readonly<Record<"createHTML" | "createScriptURL", (text: string) => string | null>>,
  ): unknown;
}

declare global {
  interface Window {
    /** Missing in browsers that do not know the standard. */
    readonly trustedTypes?: TrustedTypes;
  }
}

/**
 * Makes the one policy that the content policy allows: no text becomes markup or script in our pages. Must be called
 * before anything else. It allows the empty text, by which the library of controls clears its announcements, and
 * scripts of this host, such as the ticker's thread; these still have to be files of the build.
 */
export function trustNothing(): void {
  // Otherwise zod tries to make functions from text, and each try is reported as a fault.
  z.config({ jitless: true });
  window.trustedTypes?.createPolicy("default", {
    createHTML: (text) => (text === "" ? text : null),
    createScriptURL: (url) => (new URL(url, location.href).host === location.host ? url : null),
  });
}
