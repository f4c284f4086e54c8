/** Draws a helper who kneels at the client's feet and holds a leg at the knee and the ankle. Sizes in body heights, by eye. */

import { landmarkAt } from "../solve/place-props.ts";
import { type Circle, project } from "./camera.ts";
import { LINE, TONE } from "./palette.ts";
import type { Picture } from "./picture.ts";
import type { Scene } from "./scene.ts";

/** Draws the helper, pale, behind the client. */
export function helper(picture: Picture, { poses, pose, axis }: Scene): void {
  const shown = pose ?? poses[0];
  if (shown === undefined) return;
  const [pelvis, knee, ankle] = (["pelvis", "knee right", "ankle right"] as const).map((name) => {
    const place = landmarkAt(shown, name);
    return { along: place[axis], up: place[1] };
  }) as [Place, Place, Place];
  const away = Math.sign(ankle.along - pelvis.along) || 1;
  const ball = (along: number, up: number, radius: number): Circle =>
    axis === 0
      ? project(picture.camera, ankle.along + away * along, up, -0.04, radius)
      : project(picture.camera, -0.04, up, ankle.along + away * along, radius);
  const draw = (fill: string, ...outlines: Circle[][]) =>
    picture.hull(outlines, fill, TONE.farInk, LINE.body);
  const hip = ball(0.15, 0.29, 0.054);
  const shoulder = ball(0.03, 0.53, 0.036);
  const kneel = ball(0.13, 0.045, 0.034);
  draw(TONE.clothFar, [hip, kneel], [kneel, ball(0.37, 0.04, 0.022)]);
  draw(TONE.ghost, [hip, ball(0.07, 0.45, 0.06), shoulder]);
  draw(TONE.skinFar, [ball(0.02, 0.55, 0.026), ball(-0.004, 0.63, 0.028)]);
  draw(TONE.hair, [ball(0.0, 0.66, 0.055)]);
  draw(TONE.skinFar, [ball(-0.022, 0.65, 0.04), ball(-0.026, 0.61, 0.028)]);
  for (const held of [knee, ankle]) {
    const along = (held.along - ankle.along) * away;
    const hand = ball(along, held.up - 0.035, 0.02);
    const elbow = ball((along + 0.03) / 2 + 0.03, (held.up + 0.53) / 2 - 0.05, 0.024);
    draw(
      TONE.skinFar,
      [shoulder, elbow],
      [elbow, hand],
      [hand, ball(along - 0.03, held.up - 0.03, 0.014)],
    );
  }
}

interface Place {
  readonly along: number;
  readonly up: number;
}
