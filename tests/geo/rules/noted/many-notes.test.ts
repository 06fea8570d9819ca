import { expect, it } from 'vitest';
import type { LocalNote } from '../../../../geo/notes/note.ts';
import { roadAt } from '../../../../geo/notes/place-note.ts';
import { type MapSketch, roadsFrom } from '../../../support/build-roads.ts';
import { at, checkNoted, metres } from '../../../support/notes/noted-drive.ts';
import { seeded } from '../../../support/random-drives.ts';

/** What becomes of a road and its note on the newer map, and what a drive there is told. */
const FATES = {
  settle: 'care bridge above; not lost',
  add: 'barred measured; not lost',
  expire: '; not lost',
  'moved 20 m': 'barred measured; not lost',
  'moved 30 m': '; lost',
  'ids renumbered': 'barred measured; not lost',
  'renamed and renumbered': '; lost',
  // beside it another road is driven
  'road gone': '; lost',
} as const;
type Fate = keyof typeof FATES;
const NAMES = Object.keys(FATES) as Fate[];

const COUNT = 200;
/** Roads lie so far apart that none is near another's note. Metres. */
const APART_M = 400;

/** One straight road of 600 m for each fate, a railway over those that are settled. */
function sketch(fates: readonly Fate[], map: 'older' | 'newer'): MapSketch {
  const nodes: Record<string, [number, number]> = {};
  const ways: MapSketch['ways'][number][] = [];
  for (const [i, fate] of fates.entries()) {
    const newer = map === 'newer';
    const movedM = newer && fate === 'moved 20 m' ? 20 : newer && fate === 'moved 30 m' ? 30 : 0;
    const north = i * APART_M + movedM;
    nodes[`a${i}`] = metres(0, north);
    nodes[`b${i}`] = metres(600, north);
    const anew = newer && (fate === 'ids renumbered' || fate === 'renamed and renumbered');
    const name = newer && fate === 'renamed and renumbered' ? `Water Lane ${i}` : `Mill Lane ${i}`;
    const gone = newer && fate === 'road gone';
    if (gone) {
      nodes[`a${i}`] = metres(0, north + 60);
      nodes[`b${i}`] = metres(600, north + 60);
    }
    ways.push({
      id: (anew || gone ? 50_000 : 1000) + i,
      refs: [`a${i}`, `b${i}`],
      tags: { highway: 'tertiary', name: gone ? `New Road ${i}` : name },
    });
    if (fate !== 'settle') continue;
    nodes[`n${i}`] = metres(300, north + 60);
    nodes[`m${i}`] = metres(300, north - 60);
    ways.push({
      id: 90_000 + i,
      refs: [`n${i}`, `m${i}`],
      tags: { railway: 'rail', bridge: 'yes', layer: '1' },
    });
  }
  return { nodes, ways };
}

it('two hundred notes settle, add, expire and follow their roads over a newer map, or say that they cannot', () => {
  const random = seeded(20_261_127);
  const fates = Array.from({ length: COUNT }, () => NAMES[Math.floor(random() * NAMES.length)] ?? 'add');
  const older = roadsFrom(sketch(fates, 'older'));
  const notes = fates.map((fate, i): LocalNote => {
    const place = at(300, i * APART_M);
    return {
      id: `n${i}`,
      at: place,
      ...roadAt(place, older),
      say: fate,
      heightM: fate === 'settle' ? 3.6 : 2.6,
      ...(fate === 'expire' && { until: '2027-05-31' }),
    };
  });
  expect(notes.every(({ osm }, i) => osm?.id === 1000 + i)).toBe(true);
  const newer = sketch(fates, 'newer');
  const ids = new Set(newer.ways.map(({ id }) => id));
  const told = fates.map((fate, i) => {
    const steps = [1000 + i, 50_000 + i].filter((id) => ids.has(id));
    const report = checkNoted(newer, notes, { steps });
    const own = report.findings.filter(({ note }) => note === `n${i}`);
    const lost = report.cautions.some((caution) => caution.includes('is left out') && caution.includes(fate));
    expect(report.findings.filter(({ note }) => note !== undefined && note !== `n${i}`)).toEqual([]);
    return `${own.map(({ level, kind }) => `${level} ${kind}`).join(',')}; ${lost ? 'lost' : 'not lost'}`;
  });
  expect(told).toEqual(fates.map((fate) => FATES[fate]));
  expect(new Set(fates).size).toBe(NAMES.length);
});
