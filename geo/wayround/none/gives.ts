import type { LoadResult } from '../../load/result.ts';
import type { Finding } from '../../report/finding.ts';
import type { NoWayRound } from '../../report/way-round.ts';
import { shortIn, type Units } from '../../units/in-units.ts';
import { printKg } from '../../units/print.ts';
import { counted, listed, lowerFirst } from '../../units/text.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { LIMITS } from '../search/mover.ts';

/** What would have to give so that there is a way. */
export type Gives = NonNullable<NoWayRound['gives']>;

/** The mapped limits that bar, each with what it is short by; none where anything else bars too. */
export function givesOf(bars: readonly Finding[], units: Units): Gives {
  if (bars.length === 0 || !bars.every(({ subject }) => LIMITS.has(subject))) return [];
  return bars.map((finding) => ({
    of: 'road',
    osm: finding.osm,
    ...figuresOf(finding),
    say: sayGive(finding, units),
  }));
}

function figuresOf({ subject, spare, limit }: Finding): Pick<Gives[number], 'subject' | 'spare' | 'unit'> {
  const unit = limit?.unit;
  return spare === undefined || (unit !== 'm' && unit !== 'kg') ? { subject } : { subject, spare, unit };
}

function sayGive({ spare, limit, road, subject }: Finding, units: Units): string {
  const where = road === undefined ? '' : ` on ${road}`;
  if (spare === undefined || limit === undefined) return `The ${subject} limit${where} would have to give.`;
  const by = limit.unit === 'kg' ? printKg(-spare, 'up') : shortIn(units, -spare, 'up');
  return `The ${subject} limit of ${limit.asMapped}${where} is short by ${by}.`;
}

/**
 * @param none what there is not, without a full stop: "There is none"
 * @param bars what stops the vehicle: what is over is said before what to take off it
 */
export function sayGives(gives: Gives, none: string, bars: readonly Finding[] = []): string {
  const what = listed(gives.map(({ say }, i) => (i === 0 ? say : lowerFirst(say)).replace(/\.$/, '')));
  return gives.every(({ of }) => of === 'vehicle')
    ? [`${none} for the vehicle as it is.`, ...overIn(bars), `${what}.`].join(' ')
    : `${none}: ${counted(gives.length, 'limit')} would have to give at the least. ${what}.`;
}

/** The limits that the vehicle is over, in their findings' own sentences, each once. */
function overIn(bars: readonly Finding[]): string[] {
  const over = bars.filter(({ spare, subject }) => spare !== undefined && spare < 0 && LIMITS.has(subject));
  return [...new Set(over.map(({ say }) => say))];
}

/** A vehicle with something taken off, and what that is. */
interface Lighter {
  readonly card: VehicleCard;
  readonly load: LoadResult | undefined;
  readonly gives: Gives[number];
}

/** The same vehicle without what can be taken off it: the rack, or what it is loaded over its plate. */
export function lighter({
  card,
  load,
}: {
  readonly card: VehicleCard;
  readonly load?: LoadResult | undefined;
}): Lighter[] {
  const all: Lighter[] = [];
  if (card.rack?.fitted === true)
    all.push({
      card: { ...card, rack: { ...card.rack, fitted: false } },
      load,
      gives: { of: 'vehicle', osm: [], subject: 'length', say: 'With the rack taken off there is a way.' },
    });
  const overKg = load === undefined ? 0 : load.grossKg - card.grossKg;
  if (overKg > 0)
    all.push({
      card,
      load: undefined,
      gives: {
        of: 'vehicle',
        osm: [],
        subject: 'mass',
        spare: -overKg,
        unit: 'kg',
        say: `Loaded no heavier than its plate there is a way: ${printKg(overKg, 'up')} have to come off, water first.`,
      },
    });
  return all;
}
