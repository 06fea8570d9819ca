import type { RawMap, RawRelation } from './raw-map.ts';

/** One way driven, with the nodes where it is entered and left (OSM ids); 0 where the drive begins or ends within it. */
export interface Passed {
  readonly way: number;
  readonly enters: number;
  readonly leaves: number;
}

/**
 * The simple restrictions a drive breaks (OSM wiki, Relation:restriction): one way to one way over one node that ends
 * both, for all vehicles and at all times.
 * @returns for each turn that is forbidden, the relations that forbid it: one of them is enough to say so
 */
export function brokenOn(map: RawMap, passed: readonly Passed[]): number[][] {
  const broken = new Map<number, number[]>();
  for (const [id, relation] of map.relations) {
    const rule = simpleRule(map, relation);
    if (rule === undefined) continue;
    for (let i = 0; i + 1 < passed.length; i++) {
      const [from, to] = [passed[i]!, passed[i + 1]!];
      if (from.way !== rule.from || from.leaves !== rule.via || to.enters !== rule.via || to.way === from.way)
        continue;
      if (rule.only ? to.way !== rule.to : to.way === rule.to) broken.set(i, [...(broken.get(i) ?? []), id]);
    }
  }
  return [...broken.values()];
}

function simpleRule(map: RawMap, { members, tags }: RawRelation) {
  const kind = tags['restriction'];
  if (tags['type'] !== 'restriction' || kind === undefined || tags['except'] !== undefined) return undefined;
  if (Object.keys(tags).some((key) => /^restriction:|:conditional$|^(day|hour)_/.test(key))) return undefined;
  const only = /^only_(left_turn|right_turn|straight_on)$/.test(kind);
  if (!only && !/^no_(left_turn|right_turn|straight_on|u_turn)$/.test(kind)) return undefined;
  const [from, to, via] = ['from', 'to', 'via'].map((role) =>
    members.filter((member) => member.role === role),
  );
  if (from?.length !== 1 || to?.length !== 1 || via?.length !== 1 || via[0]?.type !== 'node')
    return undefined;
  const ends = (way: number) => {
    const refs = map.ways.get(way)?.refs ?? [];
    return refs[0] === via[0]!.ref || refs.at(-1) === via[0]!.ref;
  };
  if (!ends(from[0]!.ref) || !ends(to[0]!.ref)) return undefined;
  return { only, from: from[0]!.ref, to: to[0]!.ref, via: via[0].ref };
}
