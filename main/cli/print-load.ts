import type { Cures } from '../../geo/load/cure/cure.ts';
import { sayCures } from '../../geo/load/cure/say-cure.ts';
import { lawNotes, sayLawNote } from '../../geo/load/doubts/law-notes.ts';
import type { LoadItem } from '../../geo/load/list/load-list.ts';
import type { LoadResult } from '../../geo/load/result.ts';
import { type Moment, onTheWay } from '../../geo/load/tanks/on-the-way.ts';
import { WHEN } from '../../geo/load/tanks/say-tanks.ts';
import { LOAD_MARGIN_KG, loadLevel } from '../../geo/load/weigh/load-level.ts';
import {
  headlineOf,
  kgText,
  LIMIT_NAME,
  LOAD_CAUTION,
  sayLeft,
  sayOver,
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
  readonly cures: Cures;
}

/** A vehicle's load as a page of text: what decides first, then each plate, what to do, what was counted, the law. */
export function printLoad(page: LoadPage, { width, paint }: Pick<Terminal, 'width' | 'paint'>): string {
  const { card, result, cures } = page;
  const lines = [
    ...wrap(
      headlineOf(result, { doubtful: result.warnings.length > 0, marginKg: LOAD_MARGIN_KG }),
      width,
    ).map((line) => painted(line, result, paint)),
    '',
    ...wrap(`Vehicle  ${clip(card.name)}`, width),
    ...wrap(`Load     ${sayAboard(page)}`, width),
    '',
    ...table(result),
    '',
    ...wrap(
      `On the front axle ${(result.frontShare * 100).toFixed(1)} % of the mass; centre of mass ${result.centreM.toFixed(2)} m behind the front axle.`,
      width,
    ),
    '',
    ...(cures.needed ? [...wrap(`Do: ${clip(sayCures(cures), 2000)}`, width), ''] : []),
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

const PAINTED = { over: 'barred', tight: 'tight', within: 'clear' } as const;

function painted(line: string, result: LoadResult, paint: Paint): string {
  return paint.level(PAINTED[loadLevel(result, LOAD_MARGIN_KG)], line);
}

function sayAboard({ items, result }: LoadPage): string {
  const aboardKg = items.reduce((sum, item) => sum + item.massKg, 0);
  return `${counted(items.length, 'item')}, ${printKg(aboardKg, 'up')} beyond the empty weight of ${printKg(result.runningOrder.grossKg)}, ready to drive`;
}

/** What is to be checked, and the tanks on the way; a blank line after each kind. */
function told({ card, items, result }: LoadPage, width: number): string[] {
  const checks = result.warnings.flatMap((warning) => wrap(`Check: ${clip(warning, 400)}`, width, ''));
  const moments = onTheWay(card, items).flatMap((moment) => wrap(sayMoment(moment), width));
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
