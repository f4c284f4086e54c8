/** That what was written is kept, where that is known; and that it is not, where it is not. */
import { useApp } from "./app.ts";

const WORDS = { yes: "kept", no: "kept-not", waits: undefined } as const;

export function Kept() {
  const { say, isKept } = useApp();
  const word = WORDS[isKept];
  return <p role="status">{word && say(word)}</p>;
}
