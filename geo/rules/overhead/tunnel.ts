import { roofOver } from '../../drive/above/lies-above.ts';
import { pick } from '../../tags/pick.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Run, wholeOf } from '../run.ts';
import { sayTunnel } from './say-overhead.ts';

/** Tubes with less open road between them are one tunnel. Metres. */
const ONE_TUNNEL_M = 50;
/** A long tunnel. Metres; common practice, no source. */
const LONG_M = 500;
/** Countries where some tunnels bar a vehicle's own propane, or limit it. From memory. */
const PROPANE_BARRED = new Set(['US', 'CA']);
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

function draftOf(input: RuleInput, run: Run): Draft[] {
  const rules = run.map(({ place }) => hazmatTags(place.tags)).find((tags) => Object.keys(tags).length > 0);
  const lengthM = coveredM(run);
  const isPropaneBarred = PROPANE_BARRED.has(input.along.ruleAt(run[0].fromM).code);
  if (rules === undefined && lengthM < LONG_M && !isPropaneBarred) return [];
  return [
    {
      subject: 'tunnel',
      kind: 'tunnel',
      level: 'care',
      run,
      again: 'folded',
      tags: { ...pick(run[0].place.tags, ['tunnel', 'tunnel:name']), ...rules },
      folded: rules === undefined && !isPropaneBarred,
      ...sayTunnel(lengthM, {
        units: input.units,
        gasKg: input.card.gasKg ?? 0,
        rules: rules ?? {},
        propane: isPropaneBarred ? { someBarItIn: input.along.ruleAt(run[0].fromM).name } : 'mostly free',
      }),
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
