/** Writes the reference pages and JSON Schemas into the package; run by `npm run reference`. */
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { readLibrary } from "../cards/read-library.ts";
import { shippedFolder } from "../files/shipped.ts";
import { diskTree } from "../files/tree.ts";
import { referenceFiles } from "./pages.ts";

const folder = shippedFolder();
const { library } = readLibrary(diskTree(folder), ["exercises"], "2000-01-01");
rmSync(join(folder, "exercises/figures"), { recursive: true, force: true });
mkdirSync(join(folder, "exercises/figures"));
for (const [file, content] of referenceFiles(library)) {
  writeFileSync(join(folder, file), content);
}
