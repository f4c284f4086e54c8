/** Where the program's own cards, protocols and templates are. */
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { Fault } from "../faults/fault.ts";

/** The folder of the installed package: it holds exercises and templates. */
export function shippedFolder(from: string = import.meta.url): string {
  let folder = dirname(fileURLToPath(from));
  for (;;) {
    const file = join(folder, "package.json");
    if (existsSync(file) && JSON.parse(readFileSync(file, "utf8")).name === "paulatim")
      return folder;
    const above = dirname(folder);
    if (above === folder) {
      throw new Fault("internal", "The program cannot find its own files.", {
        hint: "Install it again.",
      });
    }
    folder = above;
  }
}
