/** Files out of the booklet: shared with the device's own sheet, or saved. */

/** Whether the device can share this file. */
export function canShare(file: File): boolean {
  try {
    return navigator.canShare?.({ files: [file] }) === true;
  } catch {
    return false;
  }
}

/** Opens the device's share sheet; false where nothing was shared. */
export async function shareFile(file: File): Promise<boolean> {
  try {
    await navigator.share({ files: [file] });
    return true;
  } catch (thrown) {
    // closed by the client: no need for a word
    return thrown instanceof Error && thrown.name === "AbortError";
  }
}

/** Saves a file where the device saves what is downloaded. */
export function saveFile(file: File): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
