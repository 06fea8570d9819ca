import { namedStretches, nameYs } from '../../geo/drive/strip/paper/names-along.ts';
import { halfWidthAt } from '../../geo/drive/strip/paper/road-drawn.ts';
import { MARK_X, tickStepM } from '../../geo/drive/strip/paper/scale.ts';
import { TOWN_APART_PX, townsApart } from '../../geo/drive/strip/paper/thin-out.ts';
import type { Strip } from '../../geo/drive/strip/strip.ts';
import { METRES_PER_MILE } from '../../geo/units/exact.ts';
import type { Units } from '../../geo/units/in-units.ts';
import { cut } from '../../geo/units/text.ts';
import { drawnOf, isDrawn, middleOf, type StripDrawing } from './drawing.ts';

/** Distances on the left, names and numbers along the road, towns across it. */
export function Lettering({ drawing, units }: { drawing: StripDrawing; units: Units }) {
  const towns = townsApart(drawing.strip.towns, drawing.scale.pxPerM);
  return (
    <g>
      <Distances drawing={drawing} towns={towns} units={units} />
      <RoadNames drawing={drawing} towns={towns} />
      <TownNames drawing={drawing} />
    </g>
  );
}

interface Props {
  readonly drawing: StripDrawing;
  readonly towns: Strip['towns'];
}

function Distances({ drawing, towns, units }: Props & { readonly units: Units }) {
  const { scale, fromM, toM } = drawing;
  const unitM = units === 'imperial' ? METRES_PER_MILE / 1000 : 1;
  const step = tickStepM(scale.pxPerM, unitM);
  const ticks: number[] = [];
  for (let m = Math.ceil(fromM / step) * step; m <= toM; m += step)
    if (towns.every(({ atM }) => Math.abs(atM - m) * scale.pxPerM > TOWN_APART_PX - 4)) ticks.push(m);
  const figure = (m: number) => (m / (1000 * unitM)).toFixed(step < 1000 * unitM ? 1 : 0);
  return (
    <>
      {ticks.map((m) => (
        <g key={m} class="strip-tick">
          <line x1={0} x2={6} y1={scale.y(m)} y2={scale.y(m)} />
          <text x={9} y={scale.y(m) + 4}>
            {figure(m)}
            {m === ticks[0] ? (units === 'imperial' ? ' mi' : ' km') : ''}
          </text>
        </g>
      ))}
    </>
  );
}

/** A road's name is written along it where there is room for this many pixels a letter. */
const PX_PER_LETTER = 6.6;
const NAME_FROM_EDGE_PX = 8;

function RoadNames({ drawing, towns }: Props) {
  const { strip, scale } = drawing;
  const taken = [
    ...strip.above.filter(({ height }) => height !== undefined).map(({ atM }) => scale.y(atM)),
    ...towns.map(({ atM }) => scale.y(atM)),
  ];
  return (
    <>
      {drawnOf(drawing, namedStretches(strip.pieces)).flatMap(({ texts, fromM, toM }) => {
        const room = (toM - fromM) * scale.pxPerM;
        const text = texts.find((each) => each.length * PX_PER_LETTER < room);
        if (text === undefined) return [];
        return nameYs(scale.y(fromM), scale.y(toM), text.length * PX_PER_LETTER, taken).map((y) => {
          const atM = scale.atM(y);
          const x = middleOf(drawing, atM) - halfWidthAt(strip.pieces, atM) - NAME_FROM_EDGE_PX;
          return (
            <text
              key={`${fromM}-${y}`}
              class="strip-name"
              transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(-90)`}
            >
              {text}
            </text>
          );
        });
      })}
    </>
  );
}

/** A town's name ends here at the latest: beyond stand the marks. */
const TOWN_RIGHT_PX = MARK_X - 14;
const TOWN_LEFT_PX = 12;
const TOWN_PX_PER_LETTER = { 1: 6.6, 2: 7.2, 3: 9.4 } as const;

/** The ground of the towns' names, under what is found there: the road must not strike the letters through. */
export function TownGrounds({ drawing }: Pick<Props, 'drawing'>) {
  return (
    <>
      {townLabels(drawing).map(({ key, x, y, half }) => (
        <rect
          key={key}
          class="strip-town-ground"
          x={x - half - 3}
          y={y - 10}
          width={2 * half + 6}
          height={20}
        />
      ))}
    </>
  );
}

function TownNames({ drawing }: Pick<Props, 'drawing'>) {
  return (
    <>
      {townLabels(drawing).map(({ key, text, size, x, y }) => (
        <text key={key} class={`strip-town strip-town-${size}`} x={x} y={y + 5}>
          {text}
        </text>
      ))}
    </>
  );
}

/** Where the towns' names stand, and how far each reaches from its middle. */
function townLabels(drawing: StripDrawing) {
  return townsApart(drawing.strip.towns, drawing.scale.pxPerM)
    .filter(({ atM }) => isDrawn(drawing, atM))
    .map(({ atM, name, size }) => {
      const perLetter = TOWN_PX_PER_LETTER[size];
      const text = cut(name, Math.floor((TOWN_RIGHT_PX - TOWN_LEFT_PX) / perLetter));
      const half = (text.length * perLetter) / 2;
      const x = Math.max(TOWN_LEFT_PX + half, Math.min(middleOf(drawing, atM), TOWN_RIGHT_PX - half));
      return { key: `${name}${atM}`, text, size, half, x, y: drawing.scale.y(atM) };
    });
}
