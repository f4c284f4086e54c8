/** A terminal for tests of commands: it keeps what is printed. */
import { DAY } from "../support/world.ts";

/** A terminal that stands in a folder on the demo's day, and what was said on it so far. */
export function terminalIn(cwd: string) {
  const said = { out: "", err: "" };
  const world = {
    cwd,
    env: {},
    platform: "linux" as const,
    today: DAY,
    out: (text: string) => {
      said.out += `${text}\n`;
    },
    err: (text: string) => {
      said.err += `${text}\n`;
    },
    colour: { out: false, err: false },
  };
  return { said, world };
}
