/** The tests without a browser, without started commands, and without those that make hundreds of programs or try thousands of inputs. */
import { configDefaults, defineConfig, mergeConfig } from "vitest/config";
import all from "./vitest.config.ts";

const BROWSER = [
  "**/*.pdf.test.ts",
  "browser/**",
  "pdf/**",
  "html/policy.test.ts",
  "html/right-to-left.test.ts",
  "phone/screens/**",
  "phone/{drift,intervals,trouble,week,when-ready}.test.ts",
];
const COMMANDS = [
  "cli/**",
  "commands/**",
  "hostile/**",
  "diary/command.test.ts",
  "notices.test.ts",
];
const MANY_INPUTS = [
  "clients/**",
  "surfaces/**",
  "calendar/{calendar-file,reissue}.test.ts",
  "cards/{bad-cards,care,images,things,translations}.test.ts",
  "clinic-look.test.ts",
  "compose/{every-shape,german,pain-words,phases,shipped-pages,units}.test.ts",
  "figure/**",
  "diary/{code,hostile}.test.ts",
  "dose/{properties,served}.test.ts",
  "plan/bad-plans.test.ts",
  "plan/serialise.test.ts",
  "plans/**",
  "program/{age,extend,flags,substitutes}.test.ts",
  "published/course-{groin,hamstring,knee-and-foot,load}.test.ts",
  "read/splice.test.ts",
  "readability/{properties,text-faults}.test.ts",
  "schedule/{away,free-time,frequency,hard-work,hours,lay-out,layout-warnings,remedies}*.test.ts",
  "signature/signature.test.ts",
  "workspace.test.ts",
  "week/{explain,program}/**",
  "week/search/{highs,pace,properties}.test.ts",
];

export default mergeConfig(
  all,
  defineConfig({
    // one process for many files: most of the time would go into loading the program again for each
    test: {
      isolate: false,
      pool: "threads",
      exclude: [...configDefaults.exclude, ...BROWSER, ...COMMANDS, ...MANY_INPUTS],
    },
  }),
);
