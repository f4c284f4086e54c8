/** Licence texts of the packages whose code the build puts into its bundles. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/**
 * The text of out/bin/THIRD-PARTY.txt: name, version, licence and its text of every bundled package.
 * `inputs`: the keys of esbuild's metafiles.
 * Throws where a package has no licence text.
 */
export function thirdParty(inputs) {
  const packages = [...new Set(inputs.flatMap((input) => packageFolder(input) ?? []))].sort();
  return packages.map(noticeOf).join(`\n${"-".repeat(72)}\n\n`);
}

/** node_modules/a/node_modules/@b/c/x.js is in node_modules/a/node_modules/@b/c. */
function packageFolder(input) {
  return /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
}

function noticeOf(folder) {
  const about = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  return `${about.name} ${about.version}, ${about.license}\n\n${licenceText(folder, about)}\n`;
}

/** The package's own file; for one under MIT without a file, its author above the permission of MIT. */
function licenceText(folder, { name, license, author }) {
  const file = readdirSync(folder).find((one) => /^(un)?licen[cs]e(\.|-|$)/i.test(one));
  if (file !== undefined) return readFileSync(join(folder, file), "utf8").trim();
  const owner = typeof author === "string" ? author : author?.name;
  if (license !== "MIT" || owner === undefined) throw new Error(`${name} has no licence text.`);
  const [permission] = /Permission is hereby granted[\s\S]*/.exec(readFileSync("LICENSE", "utf8"));
  return `Copyright (c) ${owner}\n\n${permission.trim()}`;
}
