import { mayKeepWay, saysSomething } from '../../roads/keep.ts';
import type { Tags } from '../../roads/roads.ts';
import { encodeTags, encodeText } from '../tag-bytes.ts';
import type { ByteStore } from './byte-store.ts';
import {
  chooseNode,
  chooseWay,
  DRAWN,
  decidesNode,
  decidesWay,
  drawnTags,
  lineTags,
  type Naming,
  type NodeChoice,
  nameOf,
  type WayChoice,
} from './choose.ts';
import type { ChosenTexts } from './chosen-texts.ts';
import { encodeNaming, type PackedRule } from './packed-choice.ts';

/** What decides about a way besides its tags, as a sum. */
export const WAY_AS = { edge: 1, closed: 2 } as const;

export const WAY_RULE: PackedRule<WayChoice> = {
  decides: decidesWay,
  matters: mayKeepWay,
  choose: (tags, as) =>
    chooseWay(tags, { edge: (as & WAY_AS.edge) !== 0, closed: (as & WAY_AS.closed) !== 0 }),
};

export const NODE_RULE: PackedRule<NodeChoice> = {
  decides: decidesNode,
  matters: saysSomething,
  choose: (tags) => tags && chooseNode(tags),
};

/** Chooses an element whose tags are there as texts; what it is taken as and its texts are the same as of packed ones. */
export function chooseByTags<Choice extends WayChoice | NodeChoice>(
  tags: Tags,
  as: number,
  rule: PackedRule<Choice>,
  into: ChosenTexts,
): Choice | undefined {
  into.tags.at = 0;
  into.drawn.at = 0;
  into.name.at = 0;
  const choice = rule.choose(Object.keys(tags).some(rule.matters) ? tags : undefined, as);
  if (choice === undefined || ('bare' in choice && choice.bare)) return choice;
  into.tags.append(encodeTags(tags));
  const isLine = 'line' in choice && choice.line;
  if (choice.drawn !== DRAWN.no) into.drawn.append(encodeTags(isLine ? lineTags(tags) : drawnTags(tags)));
  writeName(tags, choice.naming, into.name);
  return choice;
}

function writeName(tags: Tags, naming: Naming | undefined, out: ByteStore): void {
  const name = naming && nameOf(tags, naming);
  if (name === undefined || naming === undefined) return;
  out.append(encodeText(name));
  out.append(encodeNaming(naming));
}
