import { rankOf } from '../../../geo/report/level.ts';
import type { YardCell } from '../../../main/contract/yard/yard.ts';
import { LevelShape } from '../../look/level-mark.tsx';

const [WIDTH, HEIGHT, MARK, LEAST] = [200, 16, 12, 26];

/** A drive laid flat: as long as it is against the longest, what is more than a care at its place. */
export function Ribbon({
  lengthM,
  cells,
  longestM,
}: {
  lengthM: number;
  cells: readonly YardCell[];
  longestM: number;
}) {
  const length = Math.max(LEAST, (lengthM / Math.max(1, longestM)) * (WIDTH - MARK));
  return (
    <svg
      class="yard-ribbon"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      preserveAspectRatio="xMinYMid"
      aria-hidden="true"
    >
      <path class="yard-ribbon-road" d={`M${MARK / 2} ${HEIGHT / 2}h${length}`} />
      {marksOf(cells, lengthM, length).map(({ x, level }) => (
        <g key={x} transform={`translate(${x} ${(HEIGHT - MARK) / 2}) scale(${MARK / 24})`}>
          <LevelShape level={level} />
        </g>
      ))}
    </svg>
  );
}

/** One mark a place, the gravest of what lies there; the gravest are drawn last. */
function marksOf(cells: readonly YardCell[], lengthM: number, length: number) {
  const steps = new Map<number, YardCell['cell']['trouble'][number]['level']>();
  for (const { cell } of cells)
    for (const { level, fromM } of cell.trouble) {
      const step = Math.round(((fromM / Math.max(1, lengthM)) * length) / (MARK / 2));
      const there = steps.get(step);
      if (there === undefined || rankOf(level) < rankOf(there)) steps.set(step, level);
    }
  return [...steps]
    .map(([step, level]) => ({ x: Math.min(WIDTH - MARK, step * (MARK / 2)), level }))
    .sort((a, b) => rankOf(b.level) - rankOf(a.level));
}
