/** Decides whether the browser can keep its sandbox on this machine. */
import { readFileSync } from "node:fs";

/**
 * Arguments that turn the sandbox off where it cannot work, none where it can.
 *
 * It cannot work on Linux for root, nor where user namespaces are switched off; where the system
 * allows them only to installed programs that it knows (`installed`), it cannot for others.
 */
export function sandboxArgs(
  installed: boolean,
  platform: NodeJS.Platform,
  root = process.getuid?.() === 0,
  read: (path: string) => string | undefined = readSetting,
): string[] {
  if (platform !== "linux") return [];
  const restricted =
    read("/proc/sys/user/max_user_namespaces") === "0" ||
    read("/proc/sys/kernel/unprivileged_userns_clone") === "0" ||
    read("/proc/sys/kernel/apparmor_restrict_unprivileged_userns") === "1";
  return root || (restricted && !installed) ? NO_SANDBOX : [];
}

/** Without a sandbox the helper process that forks renderers has no use either. */
export const NO_SANDBOX = ["--no-sandbox", "--no-zygote"];

function readSetting(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8").trim();
  } catch {
    return undefined;
  }
}
