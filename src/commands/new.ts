/** `paulatim new`: a card, protocol, plan or clinic to fill in, with a comment on every field. */
import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { CLINIC_FILE } from "../clinic/read-clinic.ts";
import { EXIT } from "../faults/catalogue.ts";
import { Fault } from "../faults/fault.ts";
import { shippedFolder } from "../files/shipped.ts";
import { writeWhole } from "../files/write.ts";
import type { Terminal } from "../terminal/terminal.ts";

const KINDS = ["card", "protocol", "plan", "clinic"] as const;
type Kind = (typeof KINDS)[number];

/** Writes the file to fill in; an existing file is never replaced. Returns the exit status. */
export async function newFile(kind: string, path: string, terminal: Terminal): Promise<number> {
  const known = KINDS.find((one) => one === kind);
  if (!known) {
    throw new Fault("usage", `There is no "${kind}" to make.`, {
      hint: `There are: ${KINDS.join(", ")}.`,
    });
  }
  const file = resolve(
    terminal.cwd,
    known === "clinic" ? join(path, CLINIC_FILE) : withEnding(path),
  );
  if (existsSync(file)) {
    throw new Fault("output-unwritable", `${path} is there already and is not replaced.`, {
      hint: "Choose another name.",
    });
  }
  const id = basename(file).replace(/\.(md|yaml)$/, "");
  if (known !== "clinic" && !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id)) {
    throw new Fault("usage", `"${id}" cannot be an id.`, {
      hint: "Name the file in small letters, digits and hyphens: heel-raise-one-leg.md.",
    });
  }
  mkdirSync(dirname(file), { recursive: true });
  await writeWhole(file, filled(known, id, basename(dirname(file)), terminal.today));
  terminal.out(file);
  return EXIT.done;
}

/** The template with what is known of the file already in it. */
function filled(kind: Kind, id: string, folder: string, today: string): string {
  const template = readFileSync(join(shippedFolder(), "templates", "new", `${kind}.txt`), "utf8");
  return template
    .replaceAll("ID_OF_THE_FILE", id)
    .replaceAll("NAME_OF_THE_FOLDER", folder)
    .replaceAll("TODAY", today);
}

const withEnding = (path: string): string => (path.endsWith(".md") ? path : `${path}.md`);
