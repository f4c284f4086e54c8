/** Builds the command that is shipped: one file to start with, the rest loaded when used. */
import { readFileSync, rmSync } from "node:fs";
import { build } from "esbuild";

const { version, dependencies } = JSON.parse(readFileSync("package.json", "utf8"));

/** Left outside the bundle: they carry files of their own, or are loaded only to print. */
const EXTERNAL = [
  "puppeteer",
  "puppeteer-core",
  "@sparticuz/chromium",
  "@fontsource/open-sans",
].filter((name) => name in dependencies || name === "puppeteer-core");

rmSync("out/bin", { recursive: true, force: true });
await build({
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
});
