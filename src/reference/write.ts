/** Writes the reference pages and JSON Schemas into the package; run by `npm run reference`. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { readLibrary } from "../cards/read-library.ts";
import { shippedFolder } from "../files/shipped.ts";
import { diskTree } from "../files/tree.ts";
import { referenceFiles } from "./pages.ts";

const folder = shippedFolder();
const { library } = readLibrary(diskTree(folder), ["exercises"], "2000-01-01");
for (const [file, content] of referenceFiles(library.words))
  writeFileSync(join(folder, file), content);
