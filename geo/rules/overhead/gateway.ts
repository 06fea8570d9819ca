import { isGateway } from '../../drive/above/over-kind.ts';
import type { Tags } from '../../roads/roads.ts';
import { limitClaims } from '../../tags/limits.ts';
import { pick } from '../../tags/pick.ts';
import { passedNodes } from '../places.ts';
import type { SubjectRule } from '../rule.ts';
import { runOf } from '../run.ts';
import { heightsMatterTo } from './height-mapped.ts';
import { sayGateway } from './say-overhead.ts';

/** City gates and the like mapped as a node on the road, without a height. */
export const gateway: SubjectRule = (input) => {
  if (!heightsMatterTo(input.envelope)) return [];
  return passedNodes(input.drive, input.roads)
    .filter(({ tags, wayTags }) => isGateway(tags) && !hasHeight(tags) && !hasHeight(wayTags))
    .map((place) => ({
      subject: 'height',
      kind: 'gateway',
      level: 'unknown',
      wants: 'sign',
      run: runOf(place),
      again: 'folded',
      aspect: 'gateway',
      tags: pick(place.tags, ['historic', 'barrier', 'building', 'man_made', 'name']),
      vehicle: { value: input.card.heightM, unit: 'm', what: 'height as measured' },
      ...sayGateway(input.envelope.heightM),
    }));
};

function hasHeight(tags: Tags): boolean {
  return limitClaims({ tags, forward: true }, ['height']).length > 0;
}
