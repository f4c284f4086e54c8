/** Sets parts of a booklet closer where they would go over their page by a little. */
import type { Page } from "../browser/browser.ts";

/** Classes that a part is given one after another until it fits; what they do stands in the print styles. */
const STEPS = ["fit-1", "fit-2", "fit-3", "fit-4", "fit-5"];

/**
 * Measures every part that has `data-fit` as it will be printed, against `--page-width` and `--page-height`
 * of the document, and gives it as few steps as it takes. A part that no step makes fit is left as it was.
 * The same document on the same browser is always set alike.
 */
export async function fitParts(page: Page): Promise<void> {
  await page.emulateMediaType("print");
  await page.evaluate(FIT);
}

/** Pixels left free: a page rounds its lines, and what only just fits may not. */
const SPARE = 3;

const FIT = `{
  const { body } = document;
  const probe = body.appendChild(document.createElement("div"));
  probe.style.cssText = "width: var(--page-width, 0); height: var(--page-height, 0)";
  const { width, height } = probe.getBoundingClientRect();
  probe.remove();
  if (height > 0) {
    body.style.width = width + "px";
    for (const part of document.querySelectorAll("[data-fit]")) {
      const fits = () => part.getBoundingClientRect().height <= height - ${SPARE};
      const steps = ${JSON.stringify(STEPS)};
      for (const step of steps) {
        if (fits()) break;
        part.classList.add(step);
      }
      if (!fits()) part.classList.remove(...steps);
    }
    body.style.width = "";
  }
}` as unknown as () => void;
