import { type LoopPaper, loopMarks, loopOf } from '../../geo/drive/strip/paper/loop.ts';
import { halfWidthAt } from '../../geo/drive/strip/paper/road-drawn.ts';
import { gravestFirst } from '../../geo/report/level.ts';
import type { WayRound } from '../../geo/report/way-round.ts';
import { sayExtraShort } from '../../geo/report/ways/say-way.ts';
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

/** Each way leaves the ribbon and comes back to it like a passing loop. */
export function LoopLines({ drawing, ways }: Props) {
  return (
    <g>
      {ways.map(({ way, number }) => {
        const { path } = loopOn(drawing, way);
        return (
          <g key={number} data-way={number}>
            <path class="strip-loop-ground" d={path} />
            <path class="way-casing" d={path} />
            <path class="way-core" d={path} {...WAY_PENS[wayPen(number - 1)].core} />
          </g>
        );
      })}
    </g>
  );
}

/** What stands on the loops: their own marks, and what they cost at their middle. */
export function LoopLabels({ drawing, ways, units }: Props & { readonly units: Units }) {
  return (
    <g>
      {ways.map(({ way, number }) => {
        const paper = loopOn(drawing, way);
        return (
          <g key={number} class="strip-loop">
            <Marks paper={paper} way={way} />
            <Label paper={paper} way={way} number={number} units={units} />
          </g>
        );
      })}
    </g>
  );
}

function loopOn(drawing: StripDrawing, { fromM, toM }: WayRound): LoopPaper {
  const edge = (atM: number) => middleOf(drawing, atM) - halfWidthAt(drawing.strip.pieces, atM);
  return loopOf({
    leaves: { x: edge(fromM), y: drawing.scale.y(fromM) },
    meets: { x: edge(toM), y: drawing.scale.y(toM) },
  });
}

const MARK_PX = 14;

function Marks({ paper, way }: { readonly paper: LoopPaper; readonly way: WayRound }) {
  const shown = gravestFirst(way.findings.filter(({ folded }) => !folded));
  const shares = shown.map(({ fromM }) => fromM / Math.max(1, way.lengthM));
  return (
    <>
      {loopMarks(paper, shares).map(({ index, y }) => (
        <g
          key={shown[index]!.id}
          transform={`translate(${paper.x - MARK_PX / 2} ${y - MARK_PX / 2}) scale(${MARK_PX / 24})`}
        >
          <rect class="strip-mark-ground" x={-3} y={-3} width={30} height={30} rx={4} />
          <LevelShape level={shown[index]!.level} />
        </g>
      ))}
    </>
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
