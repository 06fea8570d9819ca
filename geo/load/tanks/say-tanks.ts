import { assertNever } from '../../result.ts';
import { printLitres } from '../../units/print.ts';
import { clip } from '../../units/text.ts';
import { LIQUID_FACTS, type Liquid } from '../../vehicle/liquids.ts';
import { kgText, LIMIT_SAID, sayShare } from '../weigh/say-plates.ts';
import type { MomentKind, Stop, StopKind } from './on-the-way.ts';
import type { TankReach, TankTold } from './tell-tank.ts';

/** `100 litres, 100 kg` */
export function tankText({ litres, kg }: Pick<TankTold, 'litres' | 'kg'>): string {
  return `${printLitres(litres)}, ${kgText(kg)}`;
}

/** `1.00 kg a litre` */
export function sayDensity(holds: Liquid): string {
  return `${LIQUID_FACTS[holds].kgPerL.toFixed(2)} kg a litre`;
}

/** What is done with the tanks at a stop. */
export const STOP_SAID: Readonly<Record<StopKind, string>> = {
  'use water': 'Water used up',
  'empty waste': 'Waste and toilet emptied',
  'fill water': 'Fresh water filled up',
};

/** `Fresh water tank 100, Waste water tank 0 litres` */
export function sayLevels(levels: Stop['levels']): string {
  const said = levels.map(({ tank, litres }) => `${clip(tank.name, 30)} ${Math.round(litres)}`);
  return said.length === 0 ? '' : `${said.join(', ')} litres`;
}

/** Until when a tank may be filled, and what emptying or filling it does: sentences. */
export function sayTank({ reach, todo }: TankTold): string[] {
  const said = reach === undefined ? [] : [sayReach(reach)];
  if (todo !== undefined)
    said.push(`${todo.kind === 'empty' ? 'Emptying it' : 'Filling it up'}: ${sayShare(todo.share)}.`);
  return said;
}

function sayReach(reach: TankReach): string {
  switch (reach.kind) {
    case 'full keeps all':
      return 'Full, it keeps every plate.';
    case 'over even empty':
      return `The ${LIMIT_SAID[reach.limit]} is over even with it empty.`;
    case 'reached even empty':
      return `The ${LIMIT_SAID[reach.limit]} is reached even with it empty.`;
    case 'reached at':
      return `At ${printLitres(reach.litres, 'down')} the ${LIMIT_SAID[reach.limit]} is reached.`;
    default:
      return assertNever(reach);
  }
}

/** `with the fresh water used and in the waste tank` */
export const WHEN: Readonly<Record<MomentKind, string>> = {
  used: 'with the fresh water used',
  'used into the waste tank': 'with the fresh water used and in the waste tank',
  emptied: 'with waste and toilet emptied',
  'filled up': 'with the fresh water filled up',
};
