import { type LoopPaper, loopMarks, loopOf } from '../../geo/drive/strip/paper/loop.ts';
import { halfWidthAt } from '../../geo/drive/strip/paper/road-drawn.ts';
import { gravestFirst } from '../../geo/report/level.ts';
import { sayExtraShort } from '../../geo/report/say-way.ts';
import type { WayRound } from '../../geo/report/way-round.ts';
import type { Units } from '../../geo/units/in-units.ts';
import { LevelShape } from '../look/level-mark.tsx';
import { WAY_PENS, wayPen } from '../look/way-pens.ts';
import { band, cutTo, drawnOf, middleOf, type StripDrawing } from './drawing.ts';

interface Raised {
  readonly way: WayRound;
  /** as the list and the map number it */
  readonly number: number;
}

interface Props {
  readonly drawing: StripDrawing;
  readonly ways: readonly Raised[];
}

/** What of the ribbon is not driven when the ways are taken: faint. */
export function Bypassed({ drawing, ways }: Props) {
  const spans = drawnOf(
    drawing,
    ways.map(({ way: { fromM, toM } }) => ({ fromM, toM })),
  );
  return (
    <g>
      {spans.map((span) => (
        <path
          key={span.fromM}
          class="strip-bypassed"
          d={band(drawing, cutTo(drawing, span), { left: -48, right: 48 })}
        />
      ))}
    </g>
  );
}

/** Each way leaves the ribbon and comes back to it like a passing loop, with its own marks and what it costs at its middle. */
export function Loops({ drawing, ways, units }: Props & { readonly units: Units }) {
  return (
    <g>
      {ways.map(({ way, number }) => (
        <Loop key={number} drawing={drawing} way={way} number={number} units={units} />
      ))}
    </g>
  );
}

function Loop({ drawing, way, number, units }: Raised & Pick<Props, 'drawing'> & { readonly units: Units }) {
  const { fromM, toM } = way;
  const edge = (atM: number) => middleOf(drawing, atM) - halfWidthAt(drawing.strip.pieces, atM);
  const paper: LoopPaper = loopOf({
    leaves: { x: edge(fromM), y: drawing.scale.y(fromM) },
    meets: { x: edge(toM), y: drawing.scale.y(toM) },
  });
  const shown = gravestFirst(way.findings.filter(({ folded }) => !folded));
  const marks = loopMarks(
    paper,
    shown.map((finding) => finding.fromM / Math.max(1, way.lengthM)),
  );
  return (
    <g class="strip-loop" data-way={number}>
      <path class="strip-loop-ground" d={paper.path} />
      <path class="way-casing" d={paper.path} />
      <path class="way-core" d={paper.path} {...WAY_PENS[wayPen(number - 1)].core} />
      {marks.map(({ index, y }) => (
        <g key={shown[index]!.id} transform={`translate(${paper.x - 7} ${y - 7}) scale(${14 / 24})`}>
          <rect class="strip-mark-ground" x={-3} y={-3} width={30} height={30} rx={4} />
          <LevelShape level={shown[index]!.level} />
        </g>
      ))}
      <Label paper={paper} way={way} number={number} units={units} />
    </g>
  );
}

const LABEL_PX = { width: 60, height: 46 };

function Label({ paper, way, number, units }: Raised & { readonly paper: LoopPaper; readonly units: Units }) {
  const [time, far] = sayExtraShort(way, units);
  const x = LABEL_PX.width / 2 + 2;
  const y = paper.middleY;
  return (
    <g>
      <rect
        class="strip-loop-label"
        x={2}
        y={y - LABEL_PX.height / 2}
        width={LABEL_PX.width}
        height={LABEL_PX.height}
        rx={3}
      />
      <text x={x} y={y - 9}>
        way {number}
      </text>
      <text x={x} y={y + 5}>
        {time}
      </text>
      <text x={x} y={y + 18}>
        {far}
      </text>
    </g>
  );
}
