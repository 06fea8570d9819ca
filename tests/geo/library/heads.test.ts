import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headsOf, type Soundness } from '../../../geo/library/heads.ts';
import { oldestFirst } from '../../../geo/library/oldest-first.ts';
import '../../support/fixed-seed.ts';

/** Versions of one item, each made on up to three of those before it, as by computers that know only some of them. */
const histories = fc.array(
  fc.record({
    parents: fc.uniqueArray(fc.nat(60), { maxLength: 3 }),
    soundness: fc.constantFrom<Soundness>('sound', 'sound', 'sound', 'unsound'),
  }),
  { minLength: 1, maxLength: 25 },
);
type History = readonly { readonly parents: readonly number[]; readonly soundness: Soundness }[];

const nameOf = (i: number) => `v${String(i).padStart(2, '0')}`;

function parentsIn(history: History): [string, string[]][] {
  return history.map(({ parents }, i) => [
    nameOf(i),
    i === 0 ? [] : [...new Set(parents.map((parent) => nameOf(parent % i)))],
  ]);
}

const soundnessIn = (history: History) => (name: string) =>
  history[Number(name.slice(1))]?.soundness ?? 'unsound';

/** Whether a version comes before another: written the plain way, from the later one down. */
function isBefore(one: string, other: string, known: ReadonlyMap<string, readonly string[]>): boolean {
  return (known.get(other) ?? []).some((parent) => parent === one || isBefore(one, parent, known));
}

describe('the newest versions of an item', () => {
  it('are those that no usable one comes after, whatever the order in which they arrived', () => {
    fc.assert(
      fc.property(histories, fc.infiniteStream(fc.nat()), (history, order) => {
        const list = parentsIn(history);
        const known = new Map(list);
        const soundness = soundnessIn(history);
        const sound = list.map(([name]) => name).filter((name) => soundness(name) === 'sound');
        const want = sound.filter((name) => !sound.some((later) => isBefore(name, later, known)));
        const shuffled = list
          .map((each) => [order.next().value ?? 0, each] as const)
          .sort(([a], [b]) => a - b)
          .map(([, each]) => each);
        const found = headsOf(new Map(shuffled), soundness);
        expect(found).toEqual({ heads: want, unread: [] });
      }),
    );
  });

  it('are the same when read one after the other, and of sound ones no other need be read', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const known = new Map(parentsIn(history));
        const truth = soundnessIn(history);
        const read = new Set<string>();
        const soundness = (name: string) => (read.has(name) ? truth(name) : 'unread');
        let found = headsOf(known, soundness);
        while (found.unread.length > 0) {
          for (const name of found.unread) read.add(name);
          found = headsOf(known, soundness);
        }
        expect(found.heads).toEqual(headsOf(known, truth).heads);
        if ([...known.keys()].every((name) => truth(name) === 'sound'))
          expect([...read].sort()).toEqual(found.heads);
      }),
    );
  });

  it('never lose a change: what is made on some of them stays until something is made on it', () => {
    const known = new Map<string, string[]>([
      ['v00', []],
      ['v01', ['v00']],
      ['v02', ['v00']],
    ]);
    expect(headsOf(known, () => 'sound').heads).toEqual(['v01', 'v02']);
    known.set('v03', ['v01', 'v02']);
    expect(headsOf(known, () => 'sound').heads).toEqual(['v03']);
  });

  it('are there even where names that cannot be true name each other', () => {
    const known = new Map([
      ['v00', ['v01']],
      ['v01', ['v00']],
    ]);
    expect(headsOf(known, (name) => (name === 'v01' ? 'sound' : 'unsound')).heads).toEqual(['v01']);
  });
});

describe('versions thrown away the oldest first', () => {
  it('leave at every step the same newest versions', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const known = new Map(parentsIn(history));
        const sound = () => 'sound' as const;
        const { heads } = headsOf(known, sound);
        const order = oldestFirst(known);
        expect(order).toHaveLength(known.size);
        for (const name of order.filter((each) => !heads.includes(each))) {
          known.delete(name);
          expect(headsOf(known, sound).heads).toEqual(heads);
        }
      }),
    );
  });
});
