import type { Finding } from '../../report/finding.ts';
import { PRICES } from '../price/prices.ts';

/** Seconds that a corner is worth, by what the check says it takes. */
export function turnKinds({ subject, kind }: Pick<Finding, 'subject' | 'kind'>): number {
  if (subject === 'swing') return PRICES.swingS;
  switch (kind) {
    case 'other lane':
      return PRICES.otherLaneS;
    case 'whole road':
      return PRICES.wholeRoadS;
    default:
      return PRICES.shuntS;
  }
}
