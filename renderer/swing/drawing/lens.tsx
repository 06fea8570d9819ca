import type { ComponentChildren } from 'preact';
import type { Contact } from '../../../geo/swing/lessons/read/contact.ts';
import type { Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import { onGround, poseAt } from '../../../geo/swing/motion/motion.ts';
import type { Point } from '../../../geo/swing/point.ts';
import { type Box, centredOn, drawn, matrixOf, type Projection } from './projection.ts';

/** Times nearer than the drawing it lies on. */
const LENS_TIMES = 3.5;
const EDGE_PX = 10;
/** Above the scale bar and the buttons. */
const FOOT_PX = 52;
/** A drawing smaller than this has no room for it. */
const LEAST_WIDE_PX = 620;
const LEAST_HIGH_PX = 380;
/** So much outweighs the way: where it touches is never hidden. */
const FOR_THE_TOUCH = 10_000;
/** It stops where it touches: what would come after may rather be hidden. */
const BEFORE_THE_TOUCH = 20;

interface LensPlace extends Box {
  readonly x: number;
  readonly y: number;
}

/** The corner of the drawing where least of the vehicle's way is hidden; undefined where the drawing is too small. */
export function lensPlace(
  scene: Scene,
  contact: Contact | undefined,
  projection: Projection,
  box: Box,
): LensPlace | undefined {
  if (box.widthPx < LEAST_WIDE_PX || box.heightPx < LEAST_HIGH_PX) return undefined;
  const widthPx = Math.round(Math.min(300, box.widthPx * 0.27));
  const heightPx = Math.round(Math.min(220, box.heightPx * 0.36));
  const low = box.heightPx - heightPx - FOOT_PX;
  const places = [
    { x: EDGE_PX, y: EDGE_PX },
    { x: EDGE_PX, y: low },
    { x: box.widthPx - widthPx - EDGE_PX, y: EDGE_PX },
    { x: box.widthPx - widthPx - EDGE_PX, y: low },
  ].map((corner) => ({ ...corner, widthPx, heightPx }));
  const told = scene.fixtures.filter(({ closed }) => closed).flatMap(({ line }) => line);
  const touches = contact ? [{ at: contact.at, weight: FOR_THE_TOUCH }] : [];
  const way = [...wayOf(scene, contact), ...told.map((at) => ({ at, weight: 1 })), ...touches].map(
    ({ at, weight }) => ({ ...drawn(projection, at), weight }),
  );
  const hidden = (place: LensPlace) =>
    way
      .filter(
        ({ x, y }) =>
          x > place.x - 20 && x < place.x + widthPx + 20 && y > place.y - 20 && y < place.y + heightPx + 20,
      )
      .reduce((sum, { weight }) => sum + weight, 0);
  return places.reduce((best, place) => (hidden(place) < hidden(best) ? place : best));
}

/** A place of the ground, and how much it matters that it is seen. */
interface Seen {
  readonly at: Point;
  readonly weight: number;
}

/** Places the vehicle's outline passes, a few a metre. */
function wayOf({ motion, vehicle }: Scene, contact: Contact | undefined): Seen[] {
  const nose = vehicle.wheelbaseM + vehicle.frontOverhangM;
  const half = vehicle.widthM / 2;
  const seen: Seen[] = [];
  for (let i = 0; i < motion.xM.length; i += 8) {
    const pose = poseAt(motion, i);
    const weight = contact && i <= contact.index ? BEFORE_THE_TOUCH : 1;
    for (const ahead of [-vehicle.rearOverhangM, 0, nose / 2, nose])
      for (const left of [-half, half]) seen.push({ at: onGround(pose, ahead, left), weight });
  }
  return seen;
}

/** The swinging corner from near, on the same drawing. The children are drawn in metres. */
export function Lens({
  place,
  middle,
  pxPerM,
  children,
  above,
}: {
  place: LensPlace;
  middle: Point;
  pxPerM: number;
  children: ComponentChildren;
  above(projection: Projection): ComponentChildren;
}) {
  const projection = centredOn(middle, pxPerM * LENS_TIMES, place);
  const { x, y, widthPx, heightPx } = place;
  return (
    <g class="lens">
      <rect class="lens-paper" x={x} y={y} width={widthPx} height={heightPx} />
      <svg x={x} y={y} width={widthPx} height={heightPx} aria-hidden="true">
        <g class="swing-world" transform={matrixOf(projection)}>
          {children}
        </g>
        {above(projection)}
      </svg>
      <rect class="lens-edge" x={x} y={y} width={widthPx} height={heightPx} />
      <g class="scale-bar">
        <text x={x + 8} y={y + heightPx - 8}>
          close-up, {LENS_TIMES} × nearer
        </text>
      </g>
    </g>
  );
}
