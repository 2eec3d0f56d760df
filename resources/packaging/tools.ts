const patienceMs = 5_000;

/**
 * Whether the tools that make installers can be had: somebody named a mirror or a cache of them, or GitHub, where
 * electron-builder fetches them, answers. Asked first, because a download that gets nowhere takes half a minute to
 * say so.
 */
export async function toolsCanBeHad(): Promise<boolean> {
  if (Object.keys(process.env).some((name) => /electron_builder_(binaries|cache)/i.test(name))) return true;
  try {
    await fetch("https://github.com", { method: "HEAD", signal: AbortSignal.timeout(patienceMs) });
    return true;
  } catch {
    return false;
  }
}
