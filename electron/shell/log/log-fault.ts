import type { LoggedFault } from "./log-line.ts";

const mostPlaces = 8;

/**
 * Describes a thrown value for the log. Never its message, which may quote what somebody typed. The place comes from
 * the stack's own lines, by bare file name, because a folder may have a person's name.
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
  // Our own classes mostly leave the name unchanged.
  return error.name === "Error" ? (error.constructor.name ?? "Error") : error.name;
}

/** Returns the places in a stack. The message comes first there, and its own lines may look like places. */
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

/** Returns a file's name without its folders, from a path or an address. */
export function bareName(path: string): string {
  return path.replace(/^.*[/\\]/, "");
}
