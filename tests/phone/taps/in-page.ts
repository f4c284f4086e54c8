/** What a test puts into a page beside the booklet: it opens the files and lets clients tap. */
import { type Outcome, tapThrough, type Version } from "./client.ts";
import { programOf } from "./program.ts";
import { Screen } from "./screen.ts";

declare global {
  interface Window {
    setUp: (code: string, drawn: boolean) => void;
    openFiles: (files: readonly string[]) => void;
    tapThrough: (seed: number) => Promise<Outcome>;
  }
}

let screen: Screen | undefined;
let versions: readonly Version[] = [];

window.setUp = (code, drawn) => {
  screen = new Screen(code, drawn);
};

window.openFiles = (files) => {
  versions = files.map((html): Version => {
    const { body } = new DOMParser().parseFromString(html, "text/html");
    const data = body.querySelector("#booklet-data")?.textContent ?? "";
    return { body, program: programOf(data) };
  });
};

window.tapThrough = async (seed) => {
  if (screen === undefined) throw new Error("nothing is set up");
  screen.end();
  screen.nowMs = 0;
  return await tapThrough(seed, screen, versions);
};
