import { given } from '../../given.ts';
import type { Level } from '../../report/level.ts';
import { type AccessTag, goodsAccess } from '../../tags/access.ts';
import { readAccessValue } from '../../tags/access-value.ts';
import { type Resolved, resolveTag } from '../../tags/resolve.ts';
import { contextsAt } from '../conditions.ts';
import type { Draft } from '../finding.ts';
import { type GoodsSigns, goodsSignsAt, sayGoods } from '../goods-signs.ts';
import { adviseOpen, wantsOf } from '../open-conditions.ts';
import { opensFrom, withOpens } from '../opens.ts';
import { runOf } from '../run.ts';
import type { AccessAsked } from './access-asked.ts';
import { accessLevel, mayClose } from './access-level.ts';
import { laneSaid } from './lane-access.ts';
import { adviseAccess, sayLorries } from './say-access.ts';

/** `hgv` and its forms, where the country's signs for goods vehicles reach this motorhome. */
export function lorryAccess(asked: AccessAsked): Draft[] {
  const { input, place, reach } = asked;
  const forms = goodsAccess(place);
  const signs = forms.length > 0 ? goodsSignsAt(input, place.fromM) : undefined;
  if (signs === undefined) return [];
  const goods = sayGoods(signs);
  const about = { subject: 'access', run: runOf(place) } as const;
  const byLane = forms
    .filter(({ lanes, conditional }) => lanes && !conditional)
    .flatMap((form) => laneSaid({ ...asked, deciding: undefined }, form) ?? [])
    .map((said): Draft => ({ ...said, ...about, say: `${said.say} ${goods}` }));
  const plain = forms.findLast(({ lanes, conditional }) => !lanes && !conditional);
  const conditionals = forms.filter(({ lanes, conditional }) => !lanes && conditional);
  const resolved = resolveTag(plain, conditionals, () => contextsAt(input, place, reach));
  const { possible, open, next } = resolved;
  const lifted = next !== undefined && !mayClose(readAccessValue(next.value ?? 'yes'), asked);
  const closes = possible.some(({ value }) => value !== undefined && mayClose(readAccessValue(value), asked));
  if (!closes && !open.some(({ unreadable }) => unreadable)) return byLane;
  const tags = [...(plain === undefined ? [] : [plain]), ...conditionals];
  const level = levelOf(signs, resolved, asked);
  const advice = adviseAccess(level, reach);
  const draft: Draft = {
    ...about,
    kind: 'lorries',
    level,
    ...given({ wants: level === 'unknown' ? wantsOf(open) : undefined }),
    tags: Object.fromEntries(tags.map(({ key, text }) => [key, text])),
    say: sayLorries(tags, open, goods),
    advice: open.length > 0 ? adviseOpen(open, advice) : advice,
    aspect: 'hgv',
  };
  const opens = open.length === 0 && lifted ? opensFrom(input, place, next.at) : undefined;
  return [...byLane, withOpens(draft, opens)];
}

/** What signs for goods vehicles may leave us is not known until the country and every condition say so. */
function levelOf({ are }: GoodsSigns, { possible, open }: Resolved<AccessTag>, asked: AccessAsked): Level {
  if (are !== 'bind' || open.length > 0) return 'unknown';
  const value = possible[0]?.value;
  return (value === undefined ? undefined : accessLevel(readAccessValue(value), asked)) ?? 'unknown';
}
