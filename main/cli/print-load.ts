import type { Cures } from '../../geo/load/cure/cure.ts';
import { sayCures } from '../../geo/load/cure/say-cure.ts';
import { lawNotes } from '../../geo/load/doubts/law-notes.ts';
import type { LoadItem } from '../../geo/load/list/load-list.ts';
import type { LoadResult } from '../../geo/load/result.ts';
import { LIMIT_NAME, LOAD_CAUTION, spareOf } from '../../geo/load/say-load.ts';
import { type Moment, onTheWay } from '../../geo/load/tanks/on-the-way.ts';
import { printKg } from '../../geo/units/print.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import type { Paint } from './paint.ts';
import { printable, wrap } from './wrap.ts';

/** A vehicle's load as a page of text: what decides first, then each plate, what to do, what was counted, the law. */
export function printLoad(
  card: VehicleCard,
  items: readonly LoadItem[],
  result: LoadResult,
  cures: Cures,
  width: number,
  paint: Paint,
): string {
  const over = result.over.length > 0;
  const headline = headlineOf(result);
  const moments = onTheWay(card, items);
  const aboardKg = items.reduce((sum, item) => sum + item.massKg, 0);
  const lines = [
    ...wrap(headline, width).map((line) => paint.level(over ? 'barred' : 'clear', line)),
    '',
    ...wrap(`Vehicle  ${printable(card.name)}`, width),
    ...wrap(
      `Load     ${items.length} ${items.length === 1 ? 'item' : 'items'}, ${printKg(aboardKg, 'up')} beyond the running order of ${printKg(result.runningOrder.grossKg)}`,
      width,
    ),
    '',
    ...table(result),
    '',
    ...wrap(
      `On the front axle ${(result.frontShare * 100).toFixed(1)} % of the mass; centre of mass ${result.centreM.toFixed(2)} m behind the front axle.`,
      width,
    ),
    '',
    ...(over || cures.cures.length > 0
      ? [...wrap(`Do: ${printable(sayCures(cures), 2000)}`, width), '']
      : []),
    ...result.warnings.flatMap((warning) => wrap(`Mind: ${printable(warning, 400)}`, width, '')),
    ...(result.warnings.length > 0 ? [''] : []),
    ...moments.flatMap((moment) => wrap(sayMoment(moment), width)),
    ...(moments.length > 0 ? [''] : []),
    ...result.notes.flatMap((note) => wrap(printable(note, 400), width)),
    '',
    'Licence and law, by the plate (no verdicts; local rules decide):',
    ...lawNotes(card).flatMap(({ says, source }) => wrap(`${says} (${source})`, width, '  ')),
    '',
    ...wrap(LOAD_CAUTION, width),
  ];
  return `${lines.join('\n')}\n`;
}

/** What decides, in one line. */
export function headlineOf(result: LoadResult): string {
  if (result.over.length > 0) return `OVER: ${sayOver(result)}. Do not leave like this.`;
  return `WITHIN THE PLATES: ${sayLeft(result)}.${result.warnings.length > 0 ? ' Mind what is said below.' : ''}`;
}

/** One state of the tanks on the way, and what decides then. */
function sayMoment({ when, result }: Moment): string {
  return `On the way, ${when}: ${result.over.length > 0 ? `OVER, ${sayOver(result)}` : sayLeft(result)}.`;
}

function sayOver(result: LoadResult): string {
  return result.over
    .map((limit) => `${LIMIT_NAME[limit]} by ${printKg(-spareOf(result, limit), 'up')}`)
    .join(', ');
}

function sayLeft(result: LoadResult): string {
  const { bindsFirst } = result;
  return `${printKg(spareOf(result, bindsFirst), 'down')} left, ${LIMIT_NAME[bindsFirst]} first`;
}

/** Rounded against the driver: what is carried up, what is left down. */
function table({ plates, spare, frontKg, rearKg, grossKg, rack }: LoadResult): string[] {
  const rows = [
    ['', 'limit', 'as loaded', 'spare'],
    row('Gross', plates.grossKg, grossKg, spare.grossKg),
    row('Front axle', plates.frontKg, frontKg, spare.frontKg),
    row('Rear axle', plates.rearKg, rearKg, spare.rearKg),
    ...(rack === undefined ? [] : [row('Rack', rack.limitKg, rack.onKg, rack.spareKg)]),
  ];
  return rows.map(([name = '', limit = '', actual = '', left = '', word = '']) =>
    `${name.padEnd(11)}${limit.padStart(9)}${actual.padStart(11)}${left.padStart(10)}${word}`.trimEnd(),
  );
}

function row(name: string, limitKg: number, actualKg: number, spareKg: number): string[] {
  const over = spareKg < -1e-6;
  return [
    name,
    printKg(limitKg, 'down'),
    printKg(actualKg, 'up'),
    printKg(spareKg, 'down').replace('-', '−'),
    over ? '  over' : '',
  ];
}
