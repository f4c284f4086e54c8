/** Paths that stay in the clinic's folder, and those that do not. */
import { mkdirSync, realpathSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it, test } from "vitest";
import { resolveInside } from "../../src/files/inside.ts";
import { freshFolder } from "./support.ts";

const base = realpathSync(freshFolder());
const clinic = join(base, "clinic");
mkdirSync(join(clinic, "cards"), { recursive: true });
mkdirSync(join(base, "clinic-other"));
writeFileSync(join(base, "secret.md"), "");
writeFileSync(join(clinic, "cards", "squat.md"), "");
writeFileSync(join(clinic, "..odd"), "");
symlinkSync(join(clinic, "cards"), join(clinic, "link-in"));
symlinkSync(base, join(clinic, "link-out"));
symlinkSync(join(base, "secret.md"), join(clinic, "secret-link.md"));
symlinkSync(join(base, "later"), join(clinic, "link-to-nothing"));
symlinkSync("loop", join(clinic, "loop"));
symlinkSync(clinic, join(base, "clinic-link"));

const INSIDE: [string, string][] = [
  ["cards/squat.md", "cards/squat.md"],
  ["./cards/../cards/squat.md", "cards/squat.md"],
  ["link-in/squat.md", "cards/squat.md"],
  ["link-in/new.md", "cards/new.md"],
  ["new/deep/file.pdf", "new/deep/file.pdf"],
  ["..odd", "..odd"],
  ["..new", "..new"],
  ["", ""],
  [".", ""],
  [join(clinic, "cards"), "cards"],
  ["link-out/clinic/cards", "cards"],
];
test.each(INSIDE)("%j is inside", async (path, real) => {
  expect(await resolveInside(clinic, path)).toBe(join(clinic, real));
  expect(await resolveInside(join(base, "clinic-link"), path)).toBe(join(clinic, real));
});

const OUTSIDE = [
  "..",
  "../secret.md",
  "../clinic-other",
  "cards/../../secret.md",
  "cards/../../new.md",
  "/etc/passwd",
  base,
  join(base, "secret.md"),
  "link-out",
  "link-out/secret.md",
  "link-out/new.md",
  "secret-link.md",
  "link-to-nothing",
  "link-to-nothing/file",
  "loop",
  "cards/squat.md/inner",
  "cards\0/squat.md",
];
test.each(OUTSIDE)("%j is outside", async (path) => {
  await expect(resolveInside(clinic, path)).rejects.toMatchObject({
    code: "outside-folder",
    exit: 1,
    hint: expect.stringContaining("clinic's folder"),
  });
});

it("needs the folder itself", async () => {
  const none = resolveInside(join(base, "none"), "a");
  await expect(none).rejects.toMatchObject({ code: "file-unreadable" });
});
