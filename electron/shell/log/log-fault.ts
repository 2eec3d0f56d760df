import type { LoggedFault } from "./log-line.ts";

const mostPlaces = 8;

/**
 * What the log tells of anything that was thrown. Never its message: that may quote what somebody typed. Where it was
 * is read off the stack's own lines, by bare file name, because a folder may be called after a person.
 */
export function faultOf(thrown: unknown): LoggedFault {
  if (!(thrown instanceof Error)) return { error: "other", code: "", call: "", at: "" };
  const { code, syscall } = thrown as NodeJS.ErrnoException;
  return {
    error: kindOf(thrown),
    code: typeof code === "string" ? code : "",
    call: typeof syscall === "string" ? syscall : "",
    at: placesIn(thrown),
  };
}

function kindOf(error: Error): string {
  // A class of our own mostly leaves the name as it found it.
  return error.name === "Error" ? (error.constructor.name ?? "Error") : error.name;
}

/** The message comes first in a stack, and may have lines of its own that look like places. */
function placesIn({ stack = "", message }: Error): string {
  const after = stack.indexOf(message) + message.length;
  const lines = stack.slice(after).matchAll(/^\s+at (?:.*\()?(?:file:\/\/)?(.+?):(\d+):(\d+)\)?$/gm);
  return [...lines]
    .map(
      ([, file = "", line, column]) =>
        `${file.startsWith("node:") ? file : bareName(file)}:${line}:${column}`,
    )
    .slice(0, mostPlaces)
    .join(",");
}

/** The name of a file without its folders, from a path or an address. */
export function bareName(path: string): string {
  return path.replace(/^.*[/\\]/, "");
}
