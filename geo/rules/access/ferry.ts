import type { Tags } from '../../roads/roads.ts';
import { limitClaims } from '../../tags/limits.ts';
import { pick } from '../../tags/pick.ts';
import { printMetres, printTonnes } from '../../units/print.ts';
import { departureSlope, printSlope } from '../../vehicle/ground-angles.ts';
import type { Draft } from '../finding.ts';
import { drivenWays } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { joinRuns, type Piece, type Run, wholeOf } from '../run.ts';

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

function nameOf(run: Run<Piece>): string {
  const name = run.find(({ place }) => place.tags['name'] !== undefined)?.place.tags['name'];
  return name === undefined ? 'A ferry' : `The ferry ${name}`;
}

function sizes(input: RuleInput, run: Run<Piece>): Draft[] {
  const mapped = run.some(({ place }) => limitClaims(place.tags, ['length'], place.forward).length > 0);
  if (mapped) return [];
  const { lengthM, mirrorsWidthM, grossKg } = input.envelope;
  return [
    {
      subject: 'length',
      kind: 'ferry',
      level: 'unknown',
      run,
      again: 'folded',
      aspect: 'ferry',
      tags: pick(run[0].place.tags, ['route', 'name', 'operator']),
      say: `${nameOf(run)}: no limit of length is mapped.`,
      advice: `Book as ${printMetres(lengthM, 'up')} long, ${printMetres(input.card.heightM, 'up')} high, ${printMetres(mirrorsWidthM, 'up')} over mirrors, ${printTonnes(grossKg)}.`,
      vehicle: { value: lengthM, unit: 'm', what: input.card.rack?.fitted ? 'length with rack' : 'length' },
    },
  ];
}

function ramp(input: RuleInput, run: Run<Piece>): Draft {
  const tail = departureSlope(input.card);
  return {
    subject: 'slope',
    kind: 'ramp',
    level: 'care',
    run,
    again: 'folded',
    aspect: 'ramp',
    tags: pick(run[0].place.tags, ['route']),
    say:
      tail === undefined
        ? 'The ferry’s ramp changes with the water; the card does not give the clearance under the tail.'
        : `The ferry’s ramp changes with the water; the tail clears a break of ${printSlope(tail)}.`,
    advice: 'Creep on and off at a slant, passengers out, and tell the crew that the tail is long.',
  };
}

function gas(input: RuleInput, run: Run<Piece>): Draft[] {
  const { gasKg } = input.card;
  if (gasKg === undefined || gasKg <= 0) return [];
  return [
    {
      subject: 'tunnel',
      kind: 'ferry',
      level: 'care',
      run,
      again: 'folded',
      aspect: 'gas',
      tags: pick(run[0].place.tags, ['route', 'operator']),
      say: `${nameOf(run)} with ${gasKg} kg of gas on board.`,
      advice:
        'Shut the bottles and every appliance before boarding; declare the gas where the operator asks.',
    },
  ];
}
