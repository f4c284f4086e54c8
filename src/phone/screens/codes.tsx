/** The codes to be read at the desk, one at a time and as large as the screen allows. */
import { correction, generate, mode } from "lean-qr";
import { useMemo, useState } from "preact/hooks";
import { useApp } from "./app.ts";

/** A quiet zone of four modules all round (ISO/IEC 18004). */
const QUIET = 4;

export function Codes({ texts }: { readonly texts: readonly string[] }) {
  const { say } = useApp();
  const [at, setAt] = useState(0);
  const text = texts[at] ?? "";
  const { path, size } = useMemo(() => drawn(text), [text]);
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

/** The dark modules as one path, a run of a row at a time. */
function drawn(text: string): { readonly path: string; readonly size: number } {
  // the texts hold the characters of this mode only, which takes least room
  const code = generate(mode.alphaNumeric(text), { minCorrectionLevel: correction.M });
  const runs: string[] = [];
  for (let y = 0; y < code.size; y += 1) {
    for (let x = 0; x < code.size; ) {
      let wide = 0;
      while (x + wide < code.size && code.get(x + wide, y)) wide += 1;
      if (wide > 0) runs.push(`M${x + QUIET} ${y + QUIET}h${wide}v1h-${wide}z`);
      x += Math.max(1, wide);
    }
  }
  return { path: runs.join(""), size: code.size + 2 * QUIET };
}
