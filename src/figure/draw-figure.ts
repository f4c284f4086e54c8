/** The picture of an exercise: from the angles of its card to SVG, its words, and what is wrong with it. */

import { POSTURES } from "./body/postures.ts";
import { alikeFaults, isFinitePose, poseFaults, posePath } from "./check/checks.ts";
import { type DrawnFrames, drawFrames, type FrameLayout } from "./draw/frames.ts";
import { mostMoved } from "./draw/outline-discs.ts";
import { figureSvg } from "./draw/svg.ts";
import type { Drawing, FigureFault, FigureSide } from "./format/drawing.ts";
import type { Figure } from "./format/schema.ts";
import { type SolvedPose, solveFigure } from "./solve/solve-figure.ts";
import { figureText } from "./text.ts";

/** Draws a figure for a side. Pure: the same figure and side give the same bytes. */
export function drawFigure(figure: Figure, side: FigureSide): Drawing {
  const poses = solveFigure(figure);
  const layout = layoutOf(figure);
  const faults = poses.every((pose) => isFinitePose(pose.angles, pose.frames))
    ? [...poseFaults(figure, poses), ...captionFaults(figure, layout)]
    : [unsolved()];
  if (faults.length > 0) return without(faults);
  const drawn = drawFrames(figure, poses, layout);
  const wrong = [...drawnFaults(figure, poses, drawn)];
  if (wrong.length > 0) return without(wrong);
  const alt = figureText(figure, poses, side);
  const { svg, width, height } = figureSvg(drawn, layout, alt, side === "left");
  return { svg, alt, captions: figure.captions ?? [], width, height, faults: [] };
}

const without = (faults: readonly FigureFault[]): Drawing => ({
  svg: undefined,
  alt: "",
  captions: [],
  width: 0,
  height: 0,
  faults,
});

function layoutOf(figure: Figure): FrameLayout {
  if (figure.poses.length === 1) return "beside";
  return figure.frames ?? (POSTURES[figure.base].long === true ? "below" : "beside");
}

/** A caption too few or too many would stand under another frame. */
function captionFaults({ captions, poses }: Figure, layout: FrameLayout): FigureFault[] {
  // a pale start limb is drawn in the frame of the end
  const frames = layout === "ghost" ? 1 : poses.length;
  if (captions === undefined || captions.length === frames) return [];
  const has = frames === 1 ? "one frame" : `${frames} frames`;
  return [
    {
      path: ["figure", "captions"],
      message: `The picture has ${has}, but ${captions.length} captions.`,
      hint: "Write one for each frame, in their order.",
    },
  ];
}

function unsolved(): FigureFault {
  return {
    path: posePath(0),
    message: "No body can take this pose.",
    hint: "State fewer angles, or let less of the body rest on something.",
  };
}

/** The smallest figure that is still readable, in millimetres a body height. */
const SMALLEST = 30;
const TOUCHING = 0.5;

function* drawnFaults(
  figure: Figure,
  poses: readonly SolvedPose[],
  drawn: DrawnFrames,
): Generator<FigureFault> {
  if (drawn.scale < SMALLEST) {
    yield {
      path: ["figure"],
      message: `The picture does not fit its frame: a body would be ${Math.round(drawn.scale)} mm tall, less than ${SMALLEST} mm.`,
      hint: "Move the things nearer together, use fewer frames, or put the frames one below the other.",
    };
  }
  const camera = drawn.pictures[0]?.camera;
  if (camera !== undefined)
    yield* alikeFaults(
      figure,
      mostMoved(
        camera,
        poses.map((pose) => pose.frames),
      ),
    );
  for (const { hint, arrow } of drawn.arrows) {
    if (arrow !== undefined && arrow.clear >= TOUCHING) continue;
    yield {
      path: figure.arrows === undefined ? ["figure"] : ["figure", "arrows", hint],
      message: "There is no room for this arrow beside the body.",
      hint: "Name another part for it to follow, another side of that part, or a direction.",
    };
  }
}
