import type { Drive } from './drive.ts';

/** How much of a drive lies on roads and off the map, and how much of it was guessed between far-apart positions. Metres. */
export function matchLengths(drive: Drive): {
  readonly drivenM: number;
  readonly offMapM: number;
  readonly guessedM: number;
} {
  const sum = { drivenM: 0, offMapM: 0, guessedM: 0 };
  for (const leg of drive.legs) {
    if (leg.kind === 'stretch') sum.drivenM += leg.toM - leg.fromM;
    if (leg.kind === 'offMap') sum.offMapM += leg.toM - leg.fromM;
  }
  for (const span of drive.guessed) sum.guessedM += span.toM - span.fromM;
  return sum;
}
