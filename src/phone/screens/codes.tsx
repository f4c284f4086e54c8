/** The codes to be read at the desk, one at a time and as large as the screen allows. */
import { mode } from "lean-qr";
import { useMemo, useState } from "preact/hooks";
import { drawCode } from "../../codes/draw.ts";
import { useApp } from "./app.ts";

export function Codes({ texts }: { readonly texts: readonly string[] }) {
  const { say } = useApp();
  const [at, setAt] = useState(0);
  const text = texts[at] ?? "";
  // the texts hold the characters of this mode only, which takes least room
  const { path, size } = useMemo(() => drawCode(mode.alphaNumeric(text)), [text]);
  const label = say("code.n", { n: at + 1, of: texts.length });
  return (
    <div class="codes">
      <p>{say("code.how")}</p>
      {texts.length > 1 && (
        <p role="status">
          <strong>{label}</strong>
        </p>
      )}
      <svg class="code" role="img" aria-label={label} viewBox={`0 0 ${size} ${size}`}>
        <rect width={size} height={size} fill="#ffffff" />
        <path d={path} fill="#000000" />
      </svg>
      {texts.length > 1 && (
        <p class="buttons">
          <button type="button" class="button" disabled={at === 0} onClick={() => setAt(at - 1)}>
            {say("code.before")}
          </button>
          <button
            type="button"
            class="button"
            disabled={at === texts.length - 1}
            onClick={() => setAt(at + 1)}
          >
            {say("code.next")}
          </button>
        </p>
      )}
    </div>
  );
}
