import { useMemo } from 'preact/hooks';
import { largest, smallest } from '../../../geo/lists.ts';
import type { Point } from '../../../geo/swing/point.ts';
import type { SwingVehicle } from '../../../geo/swing/swing-vehicle.ts';
import { type YardPlan, yardPlanOf } from '../../../geo/swing/yard/yard-plan.ts';
import { Mark } from '../drawing/key-marks.tsx';
import { MovingVehicle } from '../drawing/moving-vehicle.tsx';
import { pathOf } from '../drawing/paths.ts';
import { placeMarks } from '../drawing/place-marks.ts';
import { type Box, centredOn, drawn, matrixOf, middleOf, scaleToFit } from '../drawing/projection.ts';
import { ScaleBar, scaleBarArea } from '../drawing/scale-bar.tsx';
import { VehiclePlan } from '../drawing/vehicle-plan.tsx';

const EDGE_PX = 34;
const LETTERS = ['A', 'B', 'C'] as const;

/** The yard from above, to scale: the chalk line, the marks of the tail and the inner rear tyre's circle, with their letters. */
export function YardDrawing({
  vehicle,
  mirrorsM,
  box,
}: {
  vehicle: SwingVehicle;
  mirrorsM: number;
  box: Box;
}) {
  const plan = useMemo(() => yardPlanOf(vehicle), [vehicle]);
  const extent = extentOf(plan);
  const projection = centredOn(middleOf(extent), scaleToFit(extent, box, EDGE_PX), box);
  const places = LETTERS.map((letter) => drawn(projection, plan.marks[letter]));
  const marks = placeMarks(places, {
    box,
    areas: [scaleBarArea(box)],
    drawn: [...plan.outlines.flat(), ...plan.tailTrack].map((at) => drawn(projection, at)),
  });
  const { xM, yM } = plan.centre;
  const r = plan.wheelRadiusM;
  return (
    <svg
      class="scene-drawing yard-drawing"
      viewBox={`0 0 ${box.widthPx} ${box.heightPx}`}
      role="img"
      aria-label="The yard from above: the line along the vehicle’s side, the tail’s marks, and the circle of the inner rear tyre."
    >
      <g class="swing-world" transform={matrixOf(projection)}>
        <path
          class="yard-chalk"
          d={`M${xM - r} ${yM}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`}
        />
        <path class="swing-line" d={pathOf(plan.sideLine)} />
        <path class="swing-ghost swing-ghost-start" d={pathOf(plan.outlines[0] ?? [], 'closed')} />
        <MovingVehicle
          vehicle={vehicle}
          pose={plan.poses[1]}
          steerRad={Math.atan(vehicle.wheelbaseM / vehicle.lock.rearAxleRadiusM)}
        >
          <VehiclePlan vehicle={vehicle} mirrorsM={mirrorsM} />
        </MovingVehicle>
        <path class="yard-chalk" d={pathOf(plan.tailTrack)} />
        <path class="yard-tape" d={`${pathOf(plan.across)}${pathOf([plan.tailFoot, plan.marks.B])}`} />
      </g>
      <g class="key-marks">
        {LETTERS.map((letter, index) => (
          <Mark key={letter} says={letter} place={places[index]} mark={marks[index]} />
        ))}
      </g>
      <ScaleBar pxPerM={projection.pxPerM} box={box} />
    </svg>
  );
}

function extentOf({ outlines, tailTrack, centre, wheelRadiusM, sideLine }: YardPlan) {
  const r = wheelRadiusM;
  const all: Point[] = [
    ...outlines.flat(),
    ...tailTrack,
    ...sideLine,
    { xM: centre.xM - r, yM: centre.yM - r },
    { xM: centre.xM + r, yM: centre.yM + r },
  ];
  const [xs, ys] = [all.map(({ xM }) => xM), all.map(({ yM }) => yM)];
  return {
    from: { xM: smallest(xs), yM: smallest(ys) },
    to: { xM: largest(xs), yM: largest(ys) },
  };
}
