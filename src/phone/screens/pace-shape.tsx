/** The shape that keeps the pace: a column that fills with the lift and empties with the lowering. */
import type { SegmentKind } from "../pace/segments.ts";

interface ShapeProps {
  readonly kind: SegmentKind | "count-in";
  /** Of the part that is under way, how much is done: 0 to 1. */
  readonly done: number;
  /** What stands in its middle: seconds left, or a sign. */
  readonly middle: string;
}

/** How full the column stands at the beginning and the end of a part. */
const LEVELS: Readonly<Record<ShapeProps["kind"], readonly [number, number]>> = {
  ready: [0.06, 0.06],
  "count-in": [0.06, 0.06],
  lift: [0.06, 1],
  top: [1, 1],
  lower: [1, 0.06],
  bottom: [0.06, 0.06],
  hold: [1, 0.06],
  work: [1, 0.06],
  run: [1, 0.06],
  reps: [1, 1],
  walk: [0.5, 0.06],
  easy: [0.5, 0.06],
  rest: [0.5, 0.06],
  "rest-reps": [0.5, 0.06],
  "other-side": [0.06, 0.06],
};

const HEIGHT = 180;

/** Work is solid, rest is striped: they differ without colour too. */
const RESTS: ReadonlySet<ShapeProps["kind"]> = new Set([
  "rest",
  "rest-reps",
  "walk",
  "easy",
  "other-side",
]);

export function PaceShape({ kind, done, middle }: ShapeProps) {
  const [from, to] = LEVELS[kind];
  const height = HEIGHT * (from + (to - from) * Math.min(1, Math.max(0, done)));
  return (
    <svg class="pace-shape" viewBox="0 0 240 200" aria-hidden="true">
      <defs>
        <pattern
          id="pace-stripes"
          width="12"
          height="12"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect class="pace-stripe" width="5" height="12" />
        </pattern>
      </defs>
      <rect class="pace-column" x="20" y="10" width="200" height={HEIGHT} rx="18" />
      <rect
        class={RESTS.has(kind) ? "pace-fill resting" : "pace-fill"}
        x="20"
        y={10 + HEIGHT - height}
        width="200"
        height={height}
        rx="18"
      />
      <circle class="pace-disc" cx="120" cy="100" r="62" />
      <text
        class={middle.length > 2 ? "pace-number long" : "pace-number"}
        x="120"
        y="100"
        dy="0.36em"
      >
        {middle}
      </text>
    </svg>
  );
}
