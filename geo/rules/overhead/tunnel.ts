import { roofOver } from '../../drive/above/lies-above.ts';
import { pick } from '../../tags/pick.ts';
import { printRun } from '../../units/print.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, type Run, wholeOf } from '../run.ts';

/** Tubes with less open road between them are one tunnel. Metres. */
const ONE_TUNNEL_M = 50;
/** A long tunnel. Metres; common practice, no source. */
const LONG_M = 500;
/** What signs for dangerous goods in a tunnel are mapped with. */
const HAZMAT = /^(hazmat|tunnel_category|hazmat_tunnel_category)(:|$)/;

/**
 * Tunnels while gas is carried. European rules on dangerous goods (ADR 1.1.3.2) leave a vehicle's own gas alone, so
 * nothing here bars; some tunnels in other countries do, by signs that maps seldom have.
 */
export const tunnel: SubjectRule = (input) => {
  if ((input.card.gasKg ?? 0) <= 0) return [];
  const pieces = drivenWays(input.drive, input.roads)
    .filter(({ tags }) => isTube(tags))
    .map(wholeOf);
  return joinRuns(pieces, ONE_TUNNEL_M).flatMap((run) => draftOf(input, run));
};

function isTube(tags: Place['tags']): boolean {
  if (tags['route'] === 'ferry') return false;
  const roof = roofOver(tags);
  return roof?.key === 'tunnel' && roof.text !== 'building_passage' && roof.text !== 'avalanche_protector';
}

function draftOf(input: RuleInput, run: Run<Piece>): Draft[] {
  const hazmat = run.map(({ place }) => hazmatTags(place.tags)).find((tags) => Object.keys(tags).length > 0);
  const length = coveredM(run);
  const code = input.along.ruleAt(run[0].fromM).code;
  const abroad = code === 'US' || code === 'CA';
  if (hazmat === undefined && length < LONG_M && !abroad) return [];
  const gas = `the vehicle carries ${input.card.gasKg} kg of gas`;
  const mapped = Object.entries(hazmat ?? {}).map(([key, value]) => `${key}=${value}`);
  const bound = abroad
    ? 'Some tunnels here bar propane, or limit it: read the signs before the last exit, and shut the bottles.'
    : 'Rules on dangerous goods mostly leave a vehicle’s own gas alone. Shut the bottles; a sign or an operator may still ask more.';
  return [
    {
      subject: 'tunnel',
      kind: 'tunnel',
      level: 'care',
      run,
      again: 'folded',
      tags: { ...pick(run[0].place.tags, ['tunnel', 'tunnel:name']), ...hazmat },
      say:
        mapped.length > 0
          ? `A tunnel of ${printRun(length)} with a rule on dangerous goods (${mapped.join(', ')}); ${gas}.`
          : `A tunnel of ${printRun(length)}; ${gas}.`,
      advice: bound,
      folded: hazmat === undefined && !abroad,
    },
  ];
}

function hazmatTags(tags: Place['tags']): Record<string, string> {
  return Object.fromEntries(
    Object.entries(tags).filter(
      ([key, value]) => HAZMAT.test(key) && value !== 'yes' && value !== 'designated',
    ),
  );
}
