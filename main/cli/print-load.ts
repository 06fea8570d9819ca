import type { Cures } from '../../geo/load/cure/cure.ts';
import { sayCures } from '../../geo/load/cure/say-cure.ts';
import { lawNotes, sayLawNote } from '../../geo/load/doubts/law-notes.ts';
import type { LoadItem } from '../../geo/load/list/load-list.ts';
import type { LoadResult } from '../../geo/load/result.ts';
import type { Moment } from '../../geo/load/tanks/on-the-way.ts';
import { WHEN } from '../../geo/load/tanks/say-tanks.ts';
import type { LoadFigures } from '../../geo/load/weigh/figures.ts';
import { LOAD_MARGIN_KG, loadLevel } from '../../geo/load/weigh/load-level.ts';
import {
  headlineOf,
  kgText,
  LIMIT_NAME,
  LOAD_CAUTION,
  sayLeft,
  sayOver,
  sayRounded,
} from '../../geo/load/weigh/say-plates.ts';
import { type PlateSum, plateSums } from '../../geo/load/weigh/sums.ts';
import { printKg } from '../../geo/units/print.ts';
import { capital, clip, counted } from '../../geo/units/text.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import type { Paint } from './paint.ts';
import type { Terminal } from './terminal.ts';
import { wrap } from './wrap.ts';

/** A vehicle as loaded, and what to do about it. */
export interface LoadPage {
  readonly card: VehicleCard;
  readonly items: readonly LoadItem[];
  readonly result: LoadResult;
  /** for the load as it leaves, or for the worst moment on the way */
  readonly cures: Cures;
  /** what becomes of it on the way */
  readonly moments: readonly Moment[];
  /** it leaves within the plates, and is over one later */
  readonly worst?: Moment;
}

/** A vehicle's load as a page of text: what decides first, then each plate, what to do, what was counted, the law. */
export function printLoad(page: LoadPage, { width, paint }: Pick<Terminal, 'width' | 'paint'>): string {
  const { card, result, cures, worst } = page;
  const lines = [
    ...wrap(sayHead(page), width).map((line) => painted(line, worst?.result ?? result, paint)),
    '',
    ...wrap(`Vehicle  ${clip(card.name)}`, width),
    ...wrap(`Load     ${sayAboard(page)}`, width),
    '',
    ...table(result),
    ...wrap(sayRounded(result), width),
    '',
    ...wrap(
      `On the front axle ${(result.frontShare * 100).toFixed(1)} % of the mass; centre of mass ${result.centreM.toFixed(2)} m behind the front axle.`,
      width,
    ),
    '',
    ...(cures.needed
      ? [...wrap(`Do${worst ? ' before you leave' : ''}: ${clip(sayCures(cures), 2000)}`, width), '']
      : []),
    ...told(page, width),
    ...result.notes.flatMap((note) => wrap(clip(note, 400), width)),
    '',
    'Licence and law, by the plate (no verdicts; local rules decide):',
    ...lawNotes(card).flatMap((note) => wrap(sayLawNote(note), width, '  ')),
    '',
    ...wrap(LOAD_CAUTION, width),
  ];
  return `${lines.join('\n')}\n`;
}

/** What decides, as it leaves or later. */
function sayHead({ result, worst }: LoadPage): string {
  const head = headlineOf(result, { doubtful: result.warnings.length > 0, marginKg: LOAD_MARGIN_KG });
  return worst
    ? `OVER on the way, ${WHEN[worst.kind]}: ${sayOver(worst.result)}. As it leaves: ${head}`
    : head;
}

const PAINTED = { over: 'barred', tight: 'tight', within: 'clear' } as const;

function painted(line: string, result: LoadFigures, paint: Paint): string {
  return paint.level(PAINTED[loadLevel(result, LOAD_MARGIN_KG)], line);
}

function sayAboard({ items, result }: LoadPage): string {
  const aboardKg = items.reduce((sum, item) => sum + item.massKg, 0);
  return `${counted(items.length, 'item')}, ${printKg(aboardKg, 'up')} beyond the empty weight of ${printKg(result.runningOrder.grossKg)}, ready to drive`;
}

/** What is to be checked, and the tanks on the way; a blank line after each kind. */
function told({ result, moments: all }: LoadPage, width: number): string[] {
  const checks = result.warnings.flatMap((warning) => wrap(`Check: ${clip(warning, 400)}`, width, ''));
  const moments = all.flatMap((moment) => wrap(sayMoment(moment), width));
  return [checks, moments].flatMap((part) => (part.length > 0 ? [...part, ''] : []));
}

/** One state of the tanks on the way, and what decides then. */
function sayMoment({ kind, result }: Moment): string {
  return `On the way, ${WHEN[kind]}: ${result.over.length > 0 ? `OVER, ${sayOver(result)}` : sayLeft(result)}.`;
}

/** Rounded against the driver: what is carried up, what is left down. */
function table(result: LoadResult): string[] {
  const { gross, front, rear, rack } = plateSums(result);
  const rows = [
    ['', 'limit', 'as loaded', 'spare'],
    ...[gross, front, rear, ...(rack ? [rack] : [])].map(row),
  ];
  return rows.map(([name = '', limit = '', actual = '', left = '', word = '']) =>
    `${name.padEnd(11)}${limit.padStart(9)}${actual.padStart(11)}${left.padStart(10)}${word}`.trimEnd(),
  );
}

function row({ limit, plateKg, loadKg, spareKg, over }: PlateSum): string[] {
  const name = LIMIT_NAME[limit];
  return [
    capital(name),
    kgText(plateKg, 'down'),
    kgText(loadKg, 'up'),
    kgText(spareKg, 'down'),
    over ? '  over' : '',
  ];
}
