import { isSameRoad } from '../../drive/turns/find-turns.ts';
import type { About } from '../../report/kinds.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import { pick } from '../../tags/pick.ts';
import type { Units } from '../../units/in-units.ts';
import type { Draft } from '../finding.ts';
import { type Place, roadName } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { runOf } from '../run.ts';
import type { Corner } from './corners-of.ts';
import { type MeasuredTurn, mustBackUp, tailOverM } from './measure-turn.ts';
import { adviseTurn, sayTurn } from './say-turn.ts';

const WIDTH_KEYS = ['width', 'width:carriageway', 'width:effective', 'est_width', 'lanes', 'highway'];

const known = new WeakMap<Corner, Map<Units, Draft>>();

/** What is said of one corner of a drive; said once in each units for all vehicles that share it. */
export function cornerDraft(input: RuleInput, corner: Corner): Draft {
  const said = known.get(corner) ?? new Map<Units, Draft>();
  known.set(corner, said);
  const draft = said.get(input.units) ?? draftOf(input, corner);
  said.set(input.units, draft);
  return draft;
}

function draftOf(input: RuleInput, { measured, shown }: Corner): Draft {
  const { turn, tags } = measured;
  return {
    ...aboutOf(measured),
    // never barred: the mouth of a junction and its kerbs are not mapped, and a driver may vary the lock
    level: mustBackUp(measured) ? 'tight' : 'care',
    run: runOf(placeOf(input, measured)),
    tags: pick(tags, WIDTH_KEYS),
    turn,
    aspect: `${sideways(measured)}${turn.side}`,
    folded: !shown,
    say: sayTurn(measured, input.units),
    advice: adviseTurn(measured),
  };
}

function aboutOf(measured: MeasuredTurn): About<'turn' | 'swing'> {
  switch (measured.turn.room) {
    case 'own lane':
      return { subject: 'swing', kind: tailOverM(measured) > 0 ? measured.beside : 'circle' };
    case 'other lane on the exit':
      return { subject: 'turn', kind: 'other lane' };
    case 'whole road':
      return { subject: 'turn', kind: 'whole road' };
    case 'back up':
      return { subject: 'turn', kind: mustBackUp(measured) ? 'back up once' : 'second go' };
  }
}

/** Part of the id: a roundabout's node may begin a flick and a ring. */
function sideways({ driven }: MeasuredTurn): string {
  return driven.part === undefined ? '' : `${driven.part}-`;
}

function placeOf({ roads }: RuleInput, { driven }: MeasuredTurn): Place {
  const { entry, exit, fromM, toM, node } = driven;
  const before = mappedOn(roads, entry.way);
  const after = mappedOn(roads, exit.way);
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
