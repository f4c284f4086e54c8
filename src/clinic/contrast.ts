/** Contrast of two colours, as WCAG 2.2 defines it. */

/** Contrast ratio from 1 to 21 of two #rrggbb colours (WCAG 2.2, "contrast ratio"). */
export function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

/** Relative luminance of a #rrggbb colour (WCAG 2.2, "relative luminance"). */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
