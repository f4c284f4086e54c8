/** Tells whether a process is still running, so that what dead ones left behind can be removed. */

/**
 * Asks the system about a process id.
 *
 * Returns true for a running process, also one of another user; false for an id that no process
 * has, or that cannot be one.
 */
export function isAlive(pid: number): boolean {
  if (!Number.isSafeInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
