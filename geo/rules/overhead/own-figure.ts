import type { Above } from '../../drive/above/find-above.ts';
import { undersideOf } from '../../drive/above/underside.ts';
import { given } from '../../given.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import { limitClaims } from '../../tags/limits.ts';
import type { RuleInput } from '../rule.ts';
import type { OwnFigure } from './say-overhead.ts';

/**
 * The underside of a building that leaves too little is. A height mapped on a bridge is not ours, unless nothing as
 * high as that drives on it: then it may be meant for below.
 */
export function ownFigure(
  { roads, envelope, margins }: RuleInput,
  group: readonly Above[],
): OwnFigure | undefined {
  for (const { way, kind } of group) {
    if (kind === 'road' || kind === 'mainRoad') continue;
    const tags = mappedOn(roads, way);
    const underside = undersideOf(tags);
    if (underside?.kind === 'unreadable') {
      const { text, why } = underside;
      return { kind: 'unreadable underside', text, ...given({ why }) };
    }
    if (underside !== undefined)
      return { kind: 'underside', heightM: underside.heightM, text: underside.text };
    const claim = limitClaims({ tags, forward: true }, ['height']).find(
      ({ reading }) => reading.kind === 'value' && reading.value < envelope.heightM + margins.heightM,
    );
    if (claim !== undefined) return { kind: 'limit', key: claim.key, text: claim.text };
  }
  return undefined;
}
