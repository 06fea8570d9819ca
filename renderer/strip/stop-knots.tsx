import type { StopTimes } from '../../geo/report/day.ts';
import { isDrawn, middleOf, type StripDrawing } from './drawing.ts';

/** The day's stops as knots in the ribbon. */
export function StopKnots({ drawing, stops }: { drawing: StripDrawing; stops: readonly StopTimes[] }) {
  return (
    <g>
      {stops.map(
        ({ atM, name }) =>
          isDrawn(drawing, atM) && (
            <circle
              key={`${atM} ${name}`}
              class="strip-knot"
              cx={middleOf(drawing, atM)}
              cy={drawing.scale.y(atM)}
              r={8}
            />
          ),
      )}
    </g>
  );
}
