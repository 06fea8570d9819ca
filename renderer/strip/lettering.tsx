import type { Strip } from '../../geo/drive/strip/strip.ts';
import { METRES_PER_MILE } from '../../geo/units/print.ts';
import type { Settings } from '../../main/contract/settings.ts';
import { halfWidthPx, MARK_X, middleAt, nameYs, pieceAt, type StripScale, tickStepM } from './scale.ts';

interface Props {
  readonly strip: Strip;
  readonly scale: StripScale;
  readonly fromM: number;
  readonly toM: number;
  readonly units: Settings['units'];
}

/** A road's name is written along it where there is room for this many pixels a letter. */
const PX_PER_LETTER = 6.6;
const NAME_FROM_EDGE_PX = 8;
const TOWN_APART_PX = 18;
/** A town's name ends here at the latest: beyond stand the marks. */
const TOWN_RIGHT_PX = MARK_X - 14;
const TOWN_LEFT_PX = 12;
const TOWN_PX_PER_LETTER = { 1: 6.6, 2: 7.2, 3: 9.4 } as const;

/** Distances on the left, names and numbers along the road, towns across it. */
export function Lettering({ strip, scale, fromM, toM, units }: Props) {
  const unitM = units === 'imperial' ? METRES_PER_MILE / 1000 : 1;
  const step = tickStepM(scale.pxPerM, unitM);
  const towns = townsApart(strip, scale);
  const ticks: number[] = [];
  for (let m = Math.ceil(fromM / step) * step; m <= toM; m += step)
    if (towns.every(({ atM }) => Math.abs(scale.y(atM) - scale.y(m)) > TOWN_APART_PX - 4)) ticks.push(m);
  const figure = (m: number) => (m / (1000 * unitM)).toFixed(step < 1000 * unitM ? 1 : 0);
  const taken = [
    ...strip.above.filter(({ height }) => height !== undefined).map(({ atM }) => scale.y(atM)),
    ...towns.map(({ atM }) => scale.y(atM)),
  ];
  return (
    <g>
      {ticks.map((m) => (
        <g key={m} class="strip-tick">
          <line x1={0} x2={6} y1={scale.y(m)} y2={scale.y(m)} />
          <text x={9} y={scale.y(m) + 4}>
            {figure(m)}
            {m === ticks[0] ? (units === 'imperial' ? ' mi' : ' km') : ''}
          </text>
        </g>
      ))}
      {namedRuns(strip)
        .filter((run) => run.to >= fromM && run.from <= toM)
        .flatMap(({ texts, from, to }) => {
          const room = (to - from) * scale.pxPerM;
          const text = texts.find((each) => each.length * PX_PER_LETTER < room);
          if (text === undefined) return [];
          return nameYs(scale.y(to), scale.y(from), text.length * PX_PER_LETTER, taken).map((y) => {
            const m = scale.atM(y);
            const half = halfWidthPx(pieceAt(strip.pieces, m)?.widthM ?? 5);
            const x = middleAt(strip.lean, strip.leanStepM, m) - half - NAME_FROM_EDGE_PX;
            return (
              <text
                key={`${from}-${y}`}
                class="strip-name"
                transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(-90)`}
              >
                {text}
              </text>
            );
          });
        })}
      {towns
        .filter(({ atM }) => atM >= fromM && atM <= toM)
        .map(({ atM, name, size }) => {
          const perLetter = TOWN_PX_PER_LETTER[size];
          const text = shortened(name, Math.floor((TOWN_RIGHT_PX - TOWN_LEFT_PX) / perLetter));
          const middle = middleAt(strip.lean, strip.leanStepM, atM);
          const half = (text.length * perLetter) / 2;
          return (
            <text
              key={`${name}${atM}`}
              class={`strip-town strip-town-${size}`}
              x={Math.max(TOWN_LEFT_PX + half, Math.min(middle, TOWN_RIGHT_PX - half))}
              y={scale.y(atM) + 5}
            >
              {text}
            </text>
          );
        })}
    </g>
  );
}

function shortened(name: string, most: number): string {
  const letters = [...name];
  return letters.length <= most ? name : `${letters.slice(0, most - 1).join('')}…`;
}

interface NamedRun {
  /** the fullest first; written is the first that has room */
  readonly texts: readonly string[];
  readonly from: number;
  to: number;
}

/** Consecutive pieces of one name and number as one run. */
function namedRuns(strip: Strip): NamedRun[] {
  const runs: NamedRun[] = [];
  for (const { name, ref, fromM, toM } of strip.pieces) {
    const both = name !== undefined && ref !== undefined ? [`${name} ${ref}`] : [];
    const texts = [...both, ...(name === undefined ? [] : [name]), ...(ref === undefined ? [] : [ref])];
    if (texts.length === 0) continue;
    const last = runs.at(-1);
    if (last?.texts[0] === texts[0] && last !== undefined && fromM - last.to < 1) last.to = toM;
    else runs.push({ texts, from: fromM, to: toM });
  }
  return runs;
}

/** The larger places first; a smaller one that would stand on another is left out. */
function townsApart(strip: Strip, scale: StripScale): Strip['towns'] {
  const kept: Strip['towns'][number][] = [];
  for (const town of [...strip.towns].sort((a, b) => b.size - a.size))
    if (kept.every(({ atM }) => Math.abs(scale.y(atM) - scale.y(town.atM)) >= TOWN_APART_PX)) kept.push(town);
  return kept;
}
