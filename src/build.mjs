/** Builds the command that is shipped: one file to start with, the rest loaded when used. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { build } from "esbuild";
import { thirdParty } from "./notices.mjs";

const { version, dependencies } = JSON.parse(readFileSync("package.json", "utf8"));

/** Left outside the bundle: they carry files of their own, or are loaded only to print. */
const EXTERNAL = [
  "puppeteer",
  "puppeteer-core",
  "@sparticuz/chromium",
  "@fontsource/open-sans",
].filter((name) => name in dependencies || name === "puppeteer-core");

const command = await build({
  entryPoints: { paulatim: "src/cli.ts", reference: "src/reference/write.ts" },
  outdir: "out/bin",
  bundle: true,
  splitting: true,
  format: "esm",
  platform: "node",
  target: "node20",
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: "none",
  sourcemap: "linked",
  external: EXTERNAL,
  define: { PAULATIM_VERSION: JSON.stringify(version) },
  // CommonJS packages inside the bundle ask for require
  banner: {
    js: 'import{createRequire as __r}from"node:module";const require=__r(import.meta.url);',
  },
  logLevel: "warning",
  write: false,
  metafile: true,
});

/** Copyright and permission of the packages in every booklet, as their licence asks. */
function notices(packages) {
  const texts = packages.map((name) => readFileSync(`node_modules/${name}/LICENSE`, "utf8"));
  const owners = texts.map((text, at) => `${packages[at]}: ${/^.*Copyright.*$/m.exec(text)?.[0]}`);
  const [permission] = /Permission is hereby granted[\s\S]*/.exec(texts[0]) ?? [""];
  return `/*! Holds these packages under the MIT licence:\n${owners.join("\n")}\n\n${permission.trim()}\n*/`;
}

// the companion in every booklet's file: one script for the browsers of the last five years
const phone = await build({
  entryPoints: { phone: "src/phone/main.tsx" },
  outdir: "out/bin",
  bundle: true,
  format: "iife",
  platform: "browser",
  target: ["chrome91", "firefox90", "safari15"],
  minify: true,
  legalComments: "none",
  banner: { js: notices(["preact", "lean-qr", "fflate"]) },
  charset: "utf8",
  jsx: "automatic",
  jsxImportSource: "preact",
  logLevel: "warning",
  write: false,
  metafile: true,
});

// the old build stays where a new one does not come about
rmSync("out/bin", { recursive: true, force: true });
for (const { path, contents } of [...command.outputFiles, ...phone.outputFiles]) {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, contents, { mode: path.endsWith("paulatim.js") ? 0o755 : 0o644 });
}
const inputs = [command, phone].flatMap(({ metafile }) => Object.keys(metafile.inputs));
writeFileSync("out/bin/THIRD-PARTY.txt", thirdParty(inputs));
