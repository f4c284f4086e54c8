/** Draws a QR code as one path of its dark modules. */
import { correction, generate } from "lean-qr";

/** A quiet zone of four modules all round (ISO/IEC 18004). */
const QUIET = 4;

/** A code drawn in a square of so many units, a module a unit, quiet zone included. */
export interface DrawnCode {
  readonly path: string;
  readonly size: number;
}

/** Draws a text, or a text with its mode; about 15 % of it may be lost (level M). Throws where it is too long for a code. */
export function drawCode(data: Parameters<typeof generate>[0]): DrawnCode {
  const code = generate(data, { minCorrectionLevel: correction.M });
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
