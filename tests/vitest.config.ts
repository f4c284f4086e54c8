/** How the tests are run: three groups, by what a test starts and how much it tries. */
import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

/** Started commands and browsers, and what puts something else in place of a module: each file on its own. */
const OUTSIDE = [
  "**/*.pdf.test.ts",
  "browser/**",
  "pdf/**",
  "html/{axe,policy}.test.ts",
  "html/right-to-left.test.ts",
  "phone/screens/**",
  "phone/{flow,kept,pain,taps}/**",
  "phone/{bad-day,care-words,drift,intervals,trouble,week,when-ready}.test.ts",
  "{cli,command-line}.test.ts",
  "commands/**",
  "gallery/**",
  "hostile/**",
  "diary/command.test.ts",
  "notices.test.ts",
  "plans/**",
  "surfaces/**",
];

/** Hundreds of programs, or thousands of inputs. */
const MANY = [
  "calendar/{calendar-file,reissue}.test.ts",
  "cards/{bad-cards,care,images,things,translations}.test.ts",
  "clients/**",
  "clinic-look.test.ts",
  "compose/{every-shape,german,pain-words,phases,shipped-pages,units}.test.ts",
  "figure/**",
  "diary/{code,hostile}.test.ts",
  "dose/{properties,served}.test.ts",
  "plan/bad-plans.test.ts",
  "plan/serialise.test.ts",
  "program/{age,extend,flags,substitutes}.test.ts",
  "published/course-{groin,hamstring,knee-and-foot,load}.test.ts",
  "read/splice.test.ts",
  "readability/{properties,text-faults}.test.ts",
  "schedule/{away,free-time,frequency,hard-work,hours,lay-out,layout-warnings,remedies}*.test.ts",
  "signature/signature.test.ts",
  "pain/state-table.test.ts",
  "workspace.test.ts",
  "week/{explain,program}/**",
  "week/search/{highs,pace,properties}.test.ts",
];

const files = (patterns: readonly string[]) =>
  patterns.map((pattern) => `tests/${pattern.endsWith("**") ? `${pattern}/*.test.ts` : pattern}`);

/** One process for many files: most of the time would go into loading the program again for each. */
const together = { isolate: false, pool: "threads" } as const;

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    maxWorkers: availableParallelism(),
    testTimeout: process.env.PAULATIM_MUTANTS ? 300_000 : 30_000,
    hookTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: "fast",
          ...together,
          include: ["tests/**/*.test.ts"],
          exclude: files([...OUTSIDE, ...MANY]),
        },
      },
      {
        extends: true,
        test: { name: "many", ...together, include: files(MANY), exclude: files(OUTSIDE) },
      },
      { extends: true, test: { name: "outside", include: files(OUTSIDE) } },
    ],
  },
});
