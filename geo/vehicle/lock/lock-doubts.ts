import { METRES_PER_FOOT } from '../../units/exact.ts';
import { inUnits, type Units, wayIn } from '../../units/in-units.ts';
import { type WrittenRadius, writtenRadii } from './full-lock.ts';
import type { LockSizes } from './lock-sizes.ts';
import { isMarkMisplaced, type MeasuredLock, measuredLock } from './measured-lock.ts';

/** A brochure's circle is given to a decimetre or two, and for tyres of one size. Metres of radius; judgement. */
const BROCHURE_OFF_M = 0.15;

/** What of a card's turning figures does not go together. Metres. */
export type LockDoubt =
  | { readonly kind: 'yard against card'; readonly written: WrittenRadius; readonly measured: MeasuredLock }
  | { readonly kind: 'yard measures at odds' }
  | { readonly kind: 'tail mark misplaced' };

/** What was measured in the yard, held against itself and against what the card says of its turning. */
export function lockDoubts(sizes: LockSizes): LockDoubt[] {
  const measured = measuredLock(sizes);
  if (!measured) return [];
  return [
    ...writtenRadii(sizes)
      .filter(
        ({ radiusM }) =>
          radiusM < measured.lowM - BROCHURE_OFF_M || radiusM > measured.highM + BROCHURE_OFF_M,
      )
      .map((written) => ({ kind: 'yard against card' as const, written, measured })),
    ...(measured.atOdds ? [{ kind: 'yard measures at odds' as const }] : []),
    ...(isMarkMisplaced(sizes) ? [{ kind: 'tail mark misplaced' as const }] : []),
  ];
}

const WRITTEN: Readonly<Record<WrittenRadius['from'], string>> = {
  'rear-axle radius': 'least radius',
  'kerb circle': 'turning circle between kerbs',
  'wall circle': 'turning circle between walls',
};

/** One sentence or two, with what to do. */
export function sayLockDoubt(doubt: LockDoubt, units: Units): string {
  switch (doubt.kind) {
    case 'yard against card': {
      const { written, measured } = doubt;
      return `The ${WRITTEN[written.from]} on the card comes to ${wayIn(units, written.radiusM)} at the rear axle; measured in the yard it is ${sayRange(measured, units)}. What was measured counts. Mend the card's figure or measure again.`;
    }
    case 'yard measures at odds':
      return 'The chalked circle and the mark of the tail do not agree. The circle counts, and the range holds both. Measure again.';
    case 'tail mark misplaced':
      return 'The farthest mark of the tail should lie beside where the rear axle stood. The wheel was not hard over when it began to roll, or the mark is another one: measure again.';
  }
}

/** `4.93 to 5.04 m`, rounded outwards. */
export function sayRange(
  { lowM, highM }: { readonly lowM: number; readonly highM: number },
  units: Units,
): string {
  const outwards = (stepM: number, per: number, digits: number) => {
    const low = Math.floor(lowM / stepM + 1e-6) / per;
    const high = Math.ceil(highM / stepM - 1e-6) / per;
    return `${low.toFixed(digits)} to ${high.toFixed(digits)}`;
  };
  return inUnits(units, `${outwards(0.01, 100, 2)} m`, `${outwards(METRES_PER_FOOT / 10, 10, 1)} ft`);
}
