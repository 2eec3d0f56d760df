import { z } from "zod";

/** The part of the Trusted Types standard that is used here; the compiler's own types lack it. */
interface TrustedTypes {
  createPolicy(
    name: string,
    rules: Readonly<Record<"createHTML" | "createScriptURL", (text: string) => string | null>>,
  ): unknown;
}

declare global {
  interface Window {
    readonly trustedTypes: TrustedTypes;
  }
}

/**
 * Makes the one policy that the content policy allows: no text becomes markup or script in a page of ours. Must be called
 * before anything else. The empty text is let through, by which the controls' library empties what it read out, and so are
 * scripts of this host, as the ticker's thread is one; they still have to be files of the build.
 */
export function trustNothing(): void {
  // Else it tries whether it may make functions of text, and each try is told as a fault.
  z.config({ jitless: true });
  window.trustedTypes.createPolicy("default", {
    createHTML: (text) => (text === "" ? text : null),
    createScriptURL: (url) => (new URL(url, location.href).host === location.host ? url : null),
  });
}
