import { readdirSync, readFileSync, readlinkSync } from "node:fs";

/** The state of a socket that listens, in /proc/net/tcp (Linux, Documentation/networking/proc_net_tcp.rst). */
const listens = "0A";
/** A UDP socket that takes packets from everybody: it is not connected. */
const unconnected = "07";

/**
 * The addresses on which a process listens, as the system lists them: `tcp 0100007F:20FB`. The process's own open files say
 * which of the system's sockets are its.
 */
export function listeningOf(pid: number | "self"): string[] {
  const own = new Set(
    openFilesOf(pid).flatMap((fd) => {
      try {
        return /^socket:\[(\d+)\]$/.exec(readlinkSync(`/proc/${pid}/fd/${fd}`))?.[1] ?? [];
      } catch {
        // Closed since it was listed.
        return [];
      }
    }),
  );
  // One that ended meanwhile has none. The lists are those of the whole network that this process sees too.
  if (own.size === 0) return [];
  return ["tcp", "tcp6", "udp", "udp6"].flatMap((kind) =>
    readFileSync(`/proc/net/${kind}`, "utf8")
      .trim()
      .split("\n")
      .slice(1)
      .map((line) => line.trim().split(/\s+/))
      .filter(([, , , state, , , , , , inode = ""]) => {
        return own.has(inode) && state === (kind.startsWith("tcp") ? listens : unconnected);
      })
      .map(([, local]) => `${kind} ${local}`),
  );
}

function openFilesOf(pid: number | "self"): string[] {
  try {
    return readdirSync(`/proc/${pid}/fd`);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return [];
    throw error;
  }
}
