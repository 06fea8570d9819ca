import { namedStretches } from '../../drive/strip/paper/names-along.ts';
import { townsApart } from '../../drive/strip/paper/thin-out.ts';
import { METRES_PER_MILE } from '../../units/exact.ts';
import { cut } from '../../units/text.ts';
import { type Markup, markup } from '../page/markup.ts';
import { MM_PER_PX, type StripColumn } from './lay-column.ts';

const STEPS_M = [100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000];
const TICKS_APART_MM = 11;
const TICK_X = 9.5;
const LETTER_MM = 1.35;
const TOWN_APART_MM = 3.4;

/** Distances in kilometres and miles on the left, road names along the ribbon, towns across it. */
export function columnLettering(column: StripColumn): Markup {
  const towns = townsApart(column.strip.towns, column.mmPerM / MM_PER_PX).filter(
    ({ atM }) => atM >= column.fromM && atM <= column.toM,
  );
  const townYs = towns.map(({ atM }) => column.y(atM));
  return markup`${ticks(column)}${roadNames(column, townYs)}${towns.map(({ atM, name, size }) => {
    const text = cut(name, 20);
    const half = (text.length * (size === 3 ? 1.75 : 1.4)) / 2;
    const x = Math.max(half + 10.5, Math.min(column.middle(atM), 32 - half));
    return markup`<text class="strip-town strip-town-${size}" x="${x.toFixed(2)}" y="${(column.y(atM) + 1).toFixed(2)}">${text}</text>`;
  })}`;
}

function ticks({ fromM, toM, mmPerM, y }: StripColumn): Markup[] {
  const step = STEPS_M.find((one) => one * mmPerM >= TICKS_APART_MM) ?? 100_000;
  const at: number[] = [];
  for (let m = Math.ceil(fromM / step) * step; m <= toM; m += step) at.push(m);
  return at.map((m) => {
    const km = (m / 1000).toFixed(step < 1000 ? 1 : 0);
    const miles = (m / METRES_PER_MILE).toFixed(1);
    const [line, middle] = [y(m).toFixed(2), (y(m) - 0.4).toFixed(2)];
    return markup`<path class="strip-tick" d="M0 ${line}h${TICK_X}"/><text class="strip-km" x="${TICK_X}" y="${middle}">${km} km</text><text class="strip-mile" x="${TICK_X}" y="${(y(m) + 2.2).toFixed(2)}">${miles} mi</text>`;
  });
}

/** A name is written once where its stretch has room for it, turned along the road. */
function roadNames(column: StripColumn, taken: readonly number[]): Markup[] {
  return namedStretches(column.strip.pieces).flatMap(({ texts, fromM, toM }) => {
    const [low, high] = [Math.max(fromM, column.fromM), Math.min(toM, column.toM)];
    const roomMm = (high - low) * column.mmPerM - 2;
    const text = texts.find((one) => one.length * LETTER_MM <= roomMm);
    if (text === undefined || high <= low) return [];
    const half = (text.length * LETTER_MM) / 2;
    const [top, bottom] = [column.y(high) + half + 1, column.y(low) - half - 1];
    const middle = [0.5, 0.25, 0.75, 0, 1]
      .map((share) => top + (bottom - top) * share)
      .find((y) => taken.every((each) => Math.abs(each - y) > half + TOWN_APART_MM));
    if (middle === undefined) return [];
    const atM = column.fromM + (column.y(column.fromM) - middle) / column.mmPerM;
    const x = (column.middle(atM) - 3.6).toFixed(2);
    return [
      markup`<text class="strip-name" transform="translate(${x} ${middle.toFixed(2)}) rotate(-90)">${text}</text>`,
    ];
  });
}
