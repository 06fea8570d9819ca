import { METRES_PER_MILE } from '../../geo/units/print.ts';
import type { Settings } from '../../main/contract/settings.ts';
import type { StripView } from '../../main/contract/strip.ts';
import { middleAt, type StripScale, tickStepM, WIDTH_PX } from './scale.ts';

interface Props {
  readonly strip: StripView;
  readonly scale: StripScale;
  readonly fromM: number;
  readonly toM: number;
  readonly units: Settings['units'];
}

/** A road's name is written along it where there is room for this many letters a pixel. */
const PX_PER_LETTER = 7;
const NAME_LONGEST = 30;
const TOWN_APART_PX = 18;

/** Distances on the left, names along the road, towns across it. */
export function Lettering({ strip, scale, fromM, toM, units }: Props) {
  const unitM = units === 'imperial' ? METRES_PER_MILE / 1000 : 1;
  const step = tickStepM(scale.pxPerM, unitM);
  const ticks: number[] = [];
  for (let m = Math.ceil(fromM / step) * step; m <= toM; m += step) ticks.push(m);
  const figure = (m: number) => (m / (1000 * unitM)).toFixed(step < 1000 * unitM ? 1 : 0);
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
      {namedRuns(strip).map(({ name, from, to }) => {
        const a = Math.max(from, fromM);
        const b = Math.min(to, toM);
        const text = name.slice(0, NAME_LONGEST);
        if ((b - a) * scale.pxPerM < text.length * PX_PER_LETTER) return undefined;
        const m = (a + b) / 2;
        const x = middleAt(strip.lean, strip.leanStepM, m) - 26;
        return (
          <text
            key={`${name}${from}`}
            class="strip-name"
            transform={`translate(${x.toFixed(1)} ${scale.y(m).toFixed(1)}) rotate(-90)`}
          >
            {text}
          </text>
        );
      })}
      {townsApart(strip, scale)
        .filter(({ atM }) => atM >= fromM && atM <= toM)
        .map(({ atM, name, size }) => (
          <text
            key={`${name}${atM}`}
            class={`strip-town strip-town-${size}`}
            x={Math.min(WIDTH_PX / 2, 90)}
            y={scale.y(atM) + 4}
          >
            {name.slice(0, 22)}
          </text>
        ))}
    </g>
  );
}

/** Consecutive pieces of one name as one run. */
function namedRuns(strip: StripView): { name: string; from: number; to: number }[] {
  const runs: { name: string; from: number; to: number }[] = [];
  for (const { name, fromM, toM } of strip.pieces) {
    const last = runs.at(-1);
    if (name !== undefined && last?.name === name && fromM - last.to < 1) last.to = toM;
    else if (name !== undefined) runs.push({ name, from: fromM, to: toM });
  }
  return runs;
}

/** The larger places first; a smaller one that would stand on another is left out. */
function townsApart(strip: StripView, scale: StripScale): StripView['towns'] {
  const kept: StripView['towns'] = [];
  for (const town of [...strip.towns].sort((a, b) => b.size - a.size))
    if (kept.every(({ atM }) => Math.abs(scale.y(atM) - scale.y(town.atM)) >= TOWN_APART_PX)) kept.push(town);
  return kept;
}
