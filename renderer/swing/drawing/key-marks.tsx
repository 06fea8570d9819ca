import { fanOf } from '../../../geo/swing/lessons/read/fan.ts';
import { keysOf } from '../../../geo/swing/lessons/read/keys.ts';
import type { Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import { outlineOnGround } from '../../../geo/swing/motion/outline-on-ground.ts';
import type { Point } from '../../../geo/swing/point.ts';
import { type Area, MARK_PX, placeMarks, type Spot } from './place-marks.ts';
import { type Box, drawn, type Projection } from './projection.ts';

/** Positions of the way that the numbers keep clear of. */
const FAN = 9;
/** A line is kept clear of at places so far apart. Metres. */
const STEP_M = 0.4;

/** The numbers of a drawing's figures, each beside its place with a line to it. The figures themselves stand in `KeyList`. */
export function KeyMarks({
  scene,
  projection,
  box,
  areas = [],
}: {
  scene: Scene;
  projection: Projection;
  box: Box;
  areas?: readonly Area[];
}) {
  const keys = keysOf(scene);
  const places = keys.map(({ at }) => drawn(projection, at));
  const ways = [
    ...fanOf(scene, FAN).map((pose) => outlineOnGround(scene.vehicle, pose)),
    ...scene.fixtures.map(({ line }) => line),
  ];
  const marks = placeMarks(places, {
    box,
    areas,
    drawn: ways.flatMap(along).map((at) => drawn(projection, at)),
  });
  return (
    <g class="key-marks">
      {keys.map(({ key }, index) => (
        <Mark key={key} says={String(key)} place={places[index]} mark={marks[index]} />
      ))}
    </g>
  );
}

/** A number or letter in a ring, and a line to what it marks. */
export function Mark({
  says,
  place,
  mark,
}: {
  says: string;
  place: Spot | undefined;
  mark: Spot | undefined;
}) {
  if (!place || !mark) return null;
  const long = Math.hypot(place.x - mark.x, place.y - mark.y) || 1;
  const edge = {
    x: mark.x + ((place.x - mark.x) * MARK_PX) / long,
    y: mark.y + ((place.y - mark.y) * MARK_PX) / long,
  };
  return (
    <g class="key-mark">
      <path d={`M${place.x.toFixed(1)} ${place.y.toFixed(1)}L${edge.x.toFixed(1)} ${edge.y.toFixed(1)}`} />
      <circle class="key-dot" cx={place.x} cy={place.y} r="2.5" />
      <circle cx={mark.x} cy={mark.y} r={MARK_PX} />
      <text x={mark.x} y={mark.y + 4.5}>
        {says}
      </text>
    </g>
  );
}

function along(line: readonly Point[]): Point[] {
  return line.flatMap((from, index) => {
    const to = line[index + 1];
    if (!to) return [from];
    const steps = Math.min(60, Math.ceil(Math.hypot(to.xM - from.xM, to.yM - from.yM) / STEP_M));
    return Array.from({ length: steps }, (_, step) => ({
      xM: from.xM + ((to.xM - from.xM) * step) / steps,
      yM: from.yM + ((to.yM - from.yM) * step) / steps,
    }));
  });
}
