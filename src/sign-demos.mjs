/** Signs the demo plans again, by the name and on the day that they bear: `npm run demo:sign`. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";

for (const plan of ["demo/achilles", "demo/shoulder", "demo-de/achilles"]) {
  const file = `templates/${plan}.md`;
  const [, by = "", on = ""] =
    /^signed: \{ by: ([^,]+), on: (\d{4}-\d\d-\d\d)/m.exec(readFileSync(file, "utf8")) ?? [];
  const options = ["--by", by, "--on", on, "--issued", "none", "--yes"];
  execFileSync("node", ["out/bin/paulatim.js", "sign", file, ...options], { stdio: "inherit" });
}
