import { itemAt } from '../../lists.ts';
import { NOISE } from './found.ts';
import type { Drained } from './remedies.ts';
import type { Row } from './row.ts';
import { changed } from './row.ts';
import { spend, type Trials } from './trials.ts';

/**
 * The fewest litres to drain from each of some tanks, so that nothing stays over; every tank is used. Whole litres
 * where that can be. The last tank's amount follows from the limits, the others are tried litre by litre.
 * @param over load minus limit, after everything else that is done
 * @returns litres by tank, or undefined where no amounts do
 */
export function leastDrained(
  over: Row,
  tanks: readonly Drained[],
  trials: Trials,
): readonly number[] | undefined {
  const [tank, ...others] = tanks;
  if (tank === undefined) return over.every((kg) => kg <= NOISE) ? [] : undefined;
  if (others.length === 0) {
    const litres = leastFrom(over, tank);
    return litres === undefined ? undefined : [litres];
  }
  let best: readonly number[] | undefined;
  for (let litres = 1; litres < tank.litres + 1; litres++) {
    if (!spend(trials)) return best;
    const off = Math.min(litres, tank.litres);
    const rest = leastDrained(changed(over, tank.changePerL, off), others, trials);
    const found = rest && [off, ...rest];
    if (found && (best === undefined || massOf(found, tanks) < massOf(best, tanks))) best = found;
  }
  return best;
}

/** What so many litres off each tank weigh. Kilograms. */
export function massOf(litres: readonly number[], tanks: readonly Drained[]): number {
  return litres.reduce((sum, off, index) => sum + off * itemAt(tanks, index).kgPerL, 0);
}

/** Each limit asks for at least so much, or allows at most so much where draining loads it (behind the rear axle). */
function leastFrom(over: Row, { changePerL, litres }: Drained): number | undefined {
  let least = 0;
  let most = litres;
  for (const [limit, kg] of over.entries()) {
    const each = itemAt(changePerL, limit);
    if (each < -NOISE) least = Math.max(least, kg / -each);
    else if (each > NOISE) most = Math.min(most, -kg / each);
    else if (kg > NOISE) return undefined;
  }
  if (least > most + NOISE || least <= NOISE) return undefined;
  return Math.min(Math.ceil(least - NOISE), Math.max(least, most));
}
