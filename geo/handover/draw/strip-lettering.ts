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

/** Half of what a town's name covers, up and down, and how far it gives way to a finding's dot. */
const TOWN_HALF_MM = 1.9;
const TOWN_AWAY_MM = [0, -3, 3, -5.5, 5.5];

/**
 * Distances in kilometres and miles on the left, road names along the ribbon, towns across it.
 * @param dots where findings stand on the ribbon: no name lies on them
 */
export function columnLettering(column: StripColumn, dots: readonly number[]): Markup {
  const towns = townsApart(column.strip.towns, column.mmPerM / MM_PER_PX).filter(
    ({ atM }) => atM >= column.fromM && atM <= column.toM,
  );
  const heights = column.strip.above.flatMap(({ atM, height }) =>
    height === undefined ? [] : [column.y(atM)],
  );
  const townYs: number[] = [];
  for (const { atM } of towns) townYs.push(freeNear(column.y(atM), dots, [...heights, ...townYs]));
  return markup`${ticks(column)}${roadNames(column, [...townYs, ...heights])}${towns.map(
    ({ atM, name, size }, i) => {
      const text = cut(name, 20);
      const half = (text.length * (size === 3 ? 1.75 : 1.4)) / 2;
      const x = Math.max(half + 10.5, Math.min(column.middle(atM), 32 - half));
      const y = townYs[i]!;
      // the ribbon gives way to the name: no edge or bar runs through its letters
      return markup`<path class="strip-ground" d="M${(x - half).toFixed(2)} ${(y - TOWN_HALF_MM).toFixed(2)}h${(2 * half).toFixed(2)}v${2 * TOWN_HALF_MM}h-${(2 * half).toFixed(2)}z"/><text class="strip-town strip-town-${size}" x="${x.toFixed(2)}" y="${(y + 1).toFixed(2)}">${text}</text>`;
    },
  )}`;
}

/** The nearest place for a name that lies on no dot and near no other name; its own where all is taken. */
function freeNear(y: number, dots: readonly number[], names: readonly number[]): number {
  const free = (at: number) =>
    dots.every((dot) => Math.abs(dot - at) > TOWN_HALF_MM + 0.8) &&
    names.every((name) => Math.abs(name - at) > 2 * TOWN_HALF_MM);
  return y + (TOWN_AWAY_MM.find((mm) => free(y + mm)) ?? 0);
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
