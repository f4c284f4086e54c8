/** A tree of files in memory, to test with. */
import { Fault } from "../../src/faults/fault.ts";
import type { Tree } from "../../src/files/tree.ts";
import { MAX_BYTES } from "../../src/read/front-matter.ts";

/** Files in memory: path to text. */
export function memoryTree(files: Readonly<Record<string, string>>): Tree {
  const paths = Object.keys(files).sort();
  return {
    list: (folder, ending) => ({
      files: paths.filter(
        (path) =>
          path.startsWith(`${folder}/`) && path.endsWith(ending) && !path.endsWith("README.md"),
      ),
      faults: [],
    }),
    read(path) {
      const text = files[path];
      if (text !== undefined && text.length > MAX_BYTES) {
        return { fault: new Fault("file-too-large", "It is too large.", { place: placeIn(path) }) };
      }
      if (text !== undefined) return { text };
      return {
        fault: new Fault("file-unreadable", "There is no such file.", { place: placeIn(path) }),
      };
    },
    readBytes(path) {
      const reading = this.read(path);
      return reading.fault ? reading : { bytes: Buffer.from(reading.text) };
    },
    exists: (path) => paths.some((one) => one === path || one.startsWith(`${path}/`)),
  };
}

const placeIn = (file: string) => ({ file, line: 1, column: 1 });
