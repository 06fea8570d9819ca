import { ok, type Result } from '../../result.ts';
import { printKg } from '../../units/print.ts';
import type { Tank, VehicleCard } from '../../vehicle/card.ts';
import { kindOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { personalEffectsKg } from '../list/presets.ts';
import { litresIn } from '../places/in-tank.ts';
import type { LoadResult } from '../result.ts';
import { LIMIT_NAME, spareOf } from '../say-load.ts';
import { weigh } from '../weigh/weigh.ts';
import { type TankStep, tankSteps } from './tank-steps.ts';

/** A state of the tanks that a hire comes through. */
export interface Moment {
  /** "with the fresh water used and in the waste tank" */
  readonly when: string;
  /** comes about by itself, as water is used; the others are somebody's doing */
  readonly byItself: boolean;
  readonly result: LoadResult;
}

/**
 * What the tanks do to the axles on the way, in their order: the fresh water used (in the waste tanks as far as they
 * hold it), waste and toilet emptied, fresh water filled up. Between two of them each axle's load runs straight, so
 * these are the worst. States that change nothing are left out; none for a card without tanks.
 */
export function onTheWay(card: VehicleCard, items: readonly LoadItem[]): readonly Moment[] {
  const tanks = card.tanks ?? [];
  const fresh = tanks.filter(({ holds }) => holds === 'fresh-water');
  const waste = tanks.filter(({ holds }) => holds === 'waste-water');
  const moments: Moment[] = [];
  let now = items;
  const come = (when: string, byItself: boolean, to: readonly TankStep[]): void => {
    const steps = to.filter(({ tank, toL }) => Math.abs(litresIn(card, now, tank) - toL) > 0.5);
    const taken = tankSteps(card, now, steps);
    const last = taken.ok ? taken.value.at(-1) : undefined;
    if (!last) return;
    now = last.items;
    moments.push({ when, byItself, result: last.result });
  };
  const used = fresh.reduce((sum, tank) => sum + litresIn(card, items, tank), 0);
  if (used > 0.5)
    come(
      waste.length > 0 ? 'with the fresh water used and in the waste tank' : 'with the fresh water used',
      true,
      [...fresh.map((tank) => ({ tank, toL: 0 })), ...filledBy(card, items, waste, used)],
    );
  come(
    'with waste and toilet emptied',
    false,
    tanks
      .filter(({ holds }) => holds === 'waste-water' || holds === 'toilet')
      .map((tank) => ({ tank, toL: 0 })),
  );
  come(
    'with the fresh water filled up',
    false,
    fresh.map((tank) => ({ tank, toL: tank.capacityL })),
  );
  return moments;
}

/** The levels of some tanks when so many litres run into them, one after the other to the brim. */
function filledBy(
  card: VehicleCard,
  items: readonly LoadItem[],
  tanks: readonly Tank[],
  litres: number,
): TankStep[] {
  let left = litres;
  return tanks.map((tank) => {
    const holdsL = litresIn(card, items, tank);
    const takenL = Math.min(left, Math.max(0, tank.capacityL - holdsL));
    left -= takenL;
    return { tank, toL: holdsL + takenL };
  });
}

/**
 * The vehicle as loaded, and what the tanks do to it on the way: a plate that is kept at the start and exceeded as water
 * is used is a warning, one exceeded by filling up a note.
 */
export function weighForTheWay(card: VehicleCard, items: readonly LoadItem[]): Result<LoadResult> {
  const weighed = weigh(card, items);
  if (!weighed.ok) return weighed;
  const start = weighed.value;
  const warnings = [...start.warnings];
  const notes = [...start.notes];
  for (const { when, byItself, result } of onTheWay(card, items)) {
    const over = result.over.filter((limit) => !start.over.includes(limit));
    if (over.length === 0) continue;
    const parts = over.map(
      (limit) => `${LIMIT_NAME[limit]} over by ${printKg(-spareOf(result, limit), 'up')}`,
    );
    (byItself ? warnings : notes).push(`On the way, ${when}: ${parts.join(', ')}.`);
  }
  return ok({ ...start, warnings, notes: [...notes, ...fewThings(card, items)] });
}

/** A list with fewer things than a maker must allow for has probably forgotten some. */
function fewThings(card: VehicleCard, items: readonly LoadItem[]): string[] {
  const things = items.filter((item) => kindOf(item) === 'thing' && item.massKg > 0);
  // a line of several people counts as one, so that this says too little rather than too much
  const persons = 1 + items.filter((item) => kindOf(item) === 'person').length;
  const listedKg = things.reduce((sum, { massKg }) => sum + massKg, 0);
  const leastKg = personalEffectsKg(persons, card.lengthM);
  if (items.length === 0 || listedKg >= leastKg) return [];
  return [
    `Only ${printKg(listedKg)} of things are listed; makers must allow for at least 10 kg a person and 10 kg a metre of length, here ${printKg(leastKg)} (a builder’s lexicon after EN 1646-2, second-hand). Is everything listed?`,
  ];
}
