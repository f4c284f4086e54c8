/** The tests without a browser, without started commands, and without those that make hundreds of programs. */
import { configDefaults, defineConfig, mergeConfig } from "vitest/config";
import all from "./vitest.config.ts";

const BROWSER = [
  "tests/**/*.pdf.test.ts",
  "tests/browser/**",
  "tests/pdf/**",
  "tests/html/policy.test.ts",
  "tests/html/right-to-left.test.ts",
  "tests/phone/screens/**",
  "tests/phone/{drift,intervals,trouble,week}.test.ts",
];
const COMMANDS = [
  "tests/cli/**",
  "tests/commands/**",
  "tests/hostile/**",
  "tests/diary/command.test.ts",
  "tests/notices.test.ts",
];
const MANY_PROGRAMS = [
  "tests/surfaces/**",
  "tests/cards/{bad-cards,images}.test.ts",
  "tests/compose/{pain-words,shipped-pages,every-shape}.test.ts",
  "tests/figure/**",
  "tests/plan/bad-plans.test.ts",
  "tests/schedule/{hours,remedies,away}*.test.ts",
  "tests/week/{explain,program}/**",
  "tests/week/search/{highs,pace,properties}.test.ts",
];

export default mergeConfig(
  all,
  defineConfig({
    test: { exclude: [...configDefaults.exclude, ...BROWSER, ...COMMANDS, ...MANY_PROGRAMS] },
  }),
);
