import type { Tags } from '../../roads/roads.ts';
import { limitClaims } from '../../tags/limits.ts';
import { pick } from '../../tags/pick.ts';
import { departureSlope } from '../../vehicle/ground-angles.ts';
import type { Draft } from '../finding.ts';
import { drivenWays } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { joinRuns, type Run, wholeOf } from '../run.ts';
import { sayGas, sayRamp, sayToBook } from './say-ferry.ts';

/** Pieces of one crossing. Metres. */
const ONE_FERRY_M = 50;

/**
 * Ferries on the drive: what to book, the ramp, the gas. Limits mapped on the ferry itself are judged by their own
 * subjects; where it has none of length, this is said.
 */
export const ferry: SubjectRule = (input) => {
  const pieces = drivenWays(input.drive, input.roads)
    .filter(({ tags }) => isFerry(tags))
    .map(wholeOf);
  const runs = joinRuns(pieces, ONE_FERRY_M);
  return runs.flatMap((run) => [...sizes(input, run), ramp(input, run), ...gas(input, run)]);
};

function isFerry(tags: Tags): boolean {
  return tags['route'] === 'ferry' || (tags['route'] === 'shuttle_train' && tags['highway'] === undefined);
}

function nameOf(run: Run): string | undefined {
  return run.find(({ place }) => place.tags['name'] !== undefined)?.place.tags['name'];
}

function sizes(input: RuleInput, run: Run): Draft[] {
  const mapped = run.some(({ place }) => limitClaims(place, ['length']).length > 0);
  if (mapped) return [];
  const { lengthM } = input.envelope;
  return [
    {
      subject: 'ferry',
      kind: 'to book',
      level: 'unknown',
      wants: 'permission',
      run,
      again: 'folded',
      aspect: 'length',
      tags: pick(run[0].place.tags, ['route', 'name', 'operator']),
      vehicle: { value: lengthM, unit: 'm', what: input.card.rack?.fitted ? 'length with rack' : 'length' },
      ...sayToBook(nameOf(run), input),
    },
  ];
}

function ramp(input: RuleInput, run: Run): Draft {
  return {
    subject: 'ferry',
    kind: 'ramp',
    level: 'care',
    run,
    again: 'folded',
    aspect: 'ramp',
    tags: pick(run[0].place.tags, ['route']),
    ...sayRamp(departureSlope(input.card)),
  };
}

function gas(input: RuleInput, run: Run): Draft[] {
  const { gasKg } = input.card;
  if (gasKg === undefined || gasKg <= 0) return [];
  return [
    {
      subject: 'ferry',
      kind: 'gas',
      level: 'care',
      run,
      again: 'folded',
      aspect: 'gas',
      tags: pick(run[0].place.tags, ['route', 'operator']),
      ...sayGas(nameOf(run), gasKg),
    },
  ];
}
