import { slips } from '../units/slips.ts';
import { foldName } from './names.ts';

const TOLD_MOST = 3;
/** Two slips of the hand make another word of a short one. */
const SHORT = 5;

/** Names that a misspelt one was likely meant to be, the nearest first: at most two slips of the hand from it, three told. */
export function nearNames(written: string, names: Iterable<string>): string[] {
  const wanted = foldName(written);
  const most = wanted.length < SHORT ? 1 : 2;
  const near = new Map<string, number>();
  for (const name of names) {
    const folded = foldName(name);
    if (near.has(name) || Math.abs(folded.length - wanted.length) > most) continue;
    const count = slips(wanted, folded);
    if (count <= most) near.set(name, count);
  }
  return [...near]
    .sort((a, b) => a[1] - b[1])
    .slice(0, TOLD_MOST)
    .map(([name]) => name);
}
