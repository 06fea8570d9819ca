import { given } from '../../given.ts';
import { ok, type Result } from '../../result.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import type { LoadItem } from '../list/load-list.ts';
import { putIn } from '../places/spots.ts';
import type { StowPlace } from '../places/stow-places.ts';
import type { LoadFigures } from '../weigh/figures.ts';
import type { LoadCard } from '../weigh/load-card.ts';
import { NOISE_KG } from '../weigh/noise.ts';
import { weigh } from '../weigh/weigh.ts';
import type { Found } from './found.ts';
import { type CureWay, overBy, remediesFor } from './remedies.ts';
import { searchCures } from './search.ts';

/** One thing to do, with the mass it is about. Kilograms, litres. */
type CureStep =
  | { readonly kind: 'drain'; readonly name: string; readonly litres: number; readonly massKg: number }
  | { readonly kind: 'move'; readonly item: LoadItem; readonly to: StowPlace; readonly massKg: number }
  | { readonly kind: 'leave'; readonly item: LoadItem; readonly massKg: number };

export interface Cure {
  readonly steps: readonly CureStep[];
  /** left behind or drained */
  readonly leftKg: number;
  readonly movedKg: number;
  /** the list with the steps done */
  readonly items: readonly LoadItem[];
  /** the vehicle then; missing where that cannot be worked out */
  readonly after?: LoadFigures;
}

export interface Cures {
  /** whether a plate is exceeded, or a place holds more than it may and something helps */
  readonly needed: boolean;
  /** the best first, each about other items and all with as few steps; empty when nothing is over or nothing helps */
  readonly cures: readonly Cure[];
  /** false where the list is so long that not every set was tried: there may be a smaller one */
  readonly proved: boolean;
}

/** Sets to try before giving up the proof; a long list may take some seconds. */
const TRIALS = 300_000;
/** Enough to prove the smallest set for a family's load in the blink of an eye: more would hold up the hand. */
export const TRIALS_AT_HAND = 60_000;
/** How many ways out are shown. */
export const CURES_SHOWN = 3;

interface CureOptions {
  /** how many to give at most */
  readonly wanted?: number;
  /** how many sets to try before giving up the proof */
  readonly trials?: number;
  /** what is to be left on each plate afterwards, where it can be: kilograms */
  readonly marginKg?: number;
}

/**
 * What to move, drain or leave behind so that nothing is over its plate or its place's limit: the fewest steps; of
 * those, the least mass left behind; of those, the least mass moved. Things move to the card's lockers and the fitted
 * rack, water is drained by the litre, people and medicine stay. Clothes and food are left behind only where nothing
 * else helps; the margin is given up before that.
 */
export function cureOverload(
  card: LoadCard,
  items: readonly LoadItem[],
  options: CureOptions = {},
): Result<Cures> {
  const loaded = weigh(card, items);
  if (!loaded.ok) return loaded;
  const { wanted = CURES_SHOWN, trials = TRIALS, marginKg = 0 } = options;
  if (!isOver(card, items, loaded.value)) return ok({ needed: false, cures: [], proved: true });
  let proved = true;
  for (const how of waysFor(marginKg)) {
    const tried = searchCures(remediesFor(card, items, loaded.value, how), { wanted, trials });
    proved &&= tried.proved;
    if (tried.found.length === 0) continue;
    return ok({
      needed: true,
      cures: tried.found.map((each) => cureOf(card, each, items)),
      proved: tried.proved,
    });
  }
  return ok({ needed: loaded.value.over.length > 0, cures: [], proved });
}

/** Whether a plate, or the limit of a place, is exceeded. */
export function needsCure(card: LoadCard, items: readonly LoadItem[]): boolean {
  const loaded = weigh(card, items);
  return loaded.ok && isOver(card, items, loaded.value);
}

function isOver(card: LoadCard, items: readonly LoadItem[], loaded: LoadFigures): boolean {
  return overBy(card, items, loaded, 0).some((kg) => kg > NOISE_KG);
}

/** Tried one after the other until one of them cures. */
function waysFor(marginKg: number): readonly CureWay[] {
  const margins = marginKg > 0 ? [marginKg, 0] : [0];
  return (['may be left', 'left last'] as const).flatMap((left) =>
    margins.map((each): CureWay => ({ marginKg: each, left })),
  );
}

function cureOf(
  card: VehicleCard,
  { leftKg, movedKg, chosen, drained }: Found,
  items: readonly LoadItem[],
): Cure {
  const steps: CureStep[] = [];
  let now = [...items];
  for (const { tank, litres } of drained) {
    steps.push({ kind: 'drain', name: tank.name, litres, massKg: litres * tank.kgPerL });
    now = tank.drain(now, litres);
  }
  for (const { handled, remedy } of chosen) {
    const { item } = handled;
    const { massKg } = item;
    const { to } = remedy;
    if (to === undefined) {
      steps.push({ kind: 'leave', item, massKg });
      now = now.filter((each) => each !== item);
    } else {
      steps.push({ kind: 'move', item, to, massKg });
      now = now.map((each) => (each === item ? putIn(item, to) : each));
    }
  }
  const after = weigh(card, now);
  return { steps, leftKg, movedKg, items: now, ...given({ after: after.ok ? after.value : undefined }) };
}
