import { isSameRoad } from '../../drive/turns/find-turns.ts';
import type { About } from '../../report/kinds.ts';
import type { Turn } from '../../report/turn.ts';
import { pick } from '../../tags/pick.ts';
import type { Draft } from '../finding.ts';
import { type Place, roadName } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { runOf } from '../run.ts';
import type { Corner } from './corners-of.ts';
import type { MeasuredTurn } from './measure-turn.ts';
import { adviseTurn, sayTurn } from './say-turn.ts';

const WIDTH_KEYS = ['width', 'width:carriageway', 'width:effective', 'est_width', 'lanes', 'highway'];

/** What is said of one corner. */
export function cornerDraft(input: RuleInput, { subject, measured, shown }: Corner): Draft {
  const { turn, tags } = measured;
  return {
    ...aboutOf(subject, turn.room),
    // never more: the mouth of a junction and its kerbs are not mapped, and a driver may vary the lock
    level: 'care',
    run: runOf(placeOf(input, measured)),
    tags: pick(tags, WIDTH_KEYS),
    turn,
    aspect: `${sideways(measured)}${turn.side}`,
    say: sayTurn(measured),
    advice: adviseTurn(measured),
    folded: !shown,
  };
}

function aboutOf(subject: Corner['subject'], room: Turn['room']): About<'turn' | 'swing'> {
  if (subject === 'swing' || room === 'own lane') return { subject: 'swing', kind: 'tail' };
  return { subject, kind: ROOM_KIND[room] };
}

const ROOM_KIND = {
  'other lane on the exit': 'other lane',
  'whole road': 'whole road',
  shunt: 'backing up',
} as const;

/** Part of the id: a roundabout's node may begin a flick and a ring. */
function sideways({ driven }: MeasuredTurn): string {
  return driven.part === undefined ? '' : `${driven.part}-`;
}

function placeOf({ roads }: RuleInput, { driven }: MeasuredTurn): Place {
  const { entry, exit, fromM, toM, node } = driven;
  const before = roads.ways.tags[entry.way] ?? {};
  const after = roads.ways.tags[exit.way] ?? {};
  const [from, to] = [roadName(before), roadName(after)];
  const into = isSameRoad(before, after) || to === undefined || from === to ? undefined : to;
  const road = into === undefined ? from : from === undefined ? into : `${from} into ${into}`;
  const at = { road, forward: entry.forward, fromM, toM, wayTags: before };
  if (node < 0) return { type: 'way', id: roads.ways.id[entry.way]!, index: entry.way, tags: before, ...at };
  return {
    type: 'node',
    id: roads.nodes.id[node]!,
    index: node,
    tags: roads.nodes.tags.get(node) ?? {},
    ...at,
  };
}
