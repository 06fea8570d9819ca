import { isDeepStrictEqual } from 'node:util';
import { checkDrive } from '../../../geo/check.ts';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import { type DriveReport, driveReportSchema } from '../../../geo/report/report.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { PLAIN } from '../../../main/cli/paint.ts';
import { printReport } from '../../../main/cli/print-report.ts';
import { COACH_BUILT } from '../../main/contract/cards.ts';
import { driveOn, testMap } from '../../support/drive-on.ts';
import { randomTags, tagValue } from '../make/tags.ts';
import { faultInShown } from '../promises.ts';
import { jsonTarget } from '../target.ts';

interface Road {
  readonly tags: Tags;
  readonly nodeTags: Tags;
  readonly leaveAt?: string;
}

/** The report on a drive over three roads, the second tagged as given. */
function reportOn({ tags, nodeTags, leaveAt }: Road): DriveReport {
  const map = testMap(
    [
      { id: 1, nodes: ['0,0', '5,0'], tags: { highway: 'residential' } },
      { id: 2, nodes: ['5,0', '7,0', '9,1'], tags },
      { id: 3, nodes: ['9,1', '14,1'], tags: { highway: 'residential' } },
    ],
    { '7,0': nodeTags },
  );
  const { roads } = map;
  const drive = driveOn(map, [1, 2, 3]);
  const leaving = leaveAt === undefined ? undefined : readLeaving(leaveAt, drive, roads);
  const segment = {
    lat: Float64Array.of(50, 50),
    lon: Float64Array.of(7, 7.02),
    timeMs: Float64Array.of(NaN, NaN),
  };
  return checkDrive({
    route: { name: 'fuzz', kind: 'track', number: 1, segments: [segment] },
    file: 'fuzz.gpx',
    drive,
    roads,
    card: COACH_BUILT,
    program: 'fuzz',
    made: '2027-01-01T00:00:00Z',
    ...(leaving?.ok === true ? { leaving: leaving.value } : {}),
  });
}

/** Whatever is tagged, the report keeps its schema, and its sentences can be printed. */
export const reports = jsonTarget<Road>({
  name: 'tags to report',
  weight: 3,
  make: (random) => ({
    tags: randomTags(random, 'way'),
    nodeTags: random.chance(0.4) ? randomTags(random, 'node') : {},
    ...(random.chance(0.6)
      ? { leaveAt: `2027-06-${10 + random.below(20)}T${10 + random.below(10)}:${10 + random.below(50)}` }
      : {}),
  }),
  check(road) {
    const report = reportOn(road);
    const parsed = driveReportSchema.safeParse(JSON.parse(JSON.stringify(report)));
    if (!parsed.success) return `the report breaks its schema: ${parsed.error.message.slice(0, 300)}`;
    if (!isDeepStrictEqual(reportOn(road), report)) return 'asked twice, it reports differently';
    const printed = printReport(report, 80, PLAIN)
      .split('\n')
      .filter((line) => line !== '');
    return faultInShown([...report.findings.flatMap(({ say, advice }) => [say, advice]), ...printed]);
  },
});

interface Restriction {
  readonly key: string;
  readonly value: string;
}

/** A tag that bars this vehicle, the sound figures that would let it pass, and the words that say there is no limit. */
const BARRING = [
  { key: 'maxheight', value: '2.5', passes: (metres: number) => metres >= 3.05 },
  { key: 'maxwidth', value: '2', passes: (metres: number) => metres >= 2.32 },
  { key: 'maxlength', value: '6', passes: (metres: number) => metres >= 7.4 },
  { key: 'maxweight', value: '2', passes: (tonnes: number) => tonnes >= 3.5 },
  { key: 'maxaxleload', value: '1.5', passes: (tonnes: number) => tonnes >= 2.24 },
  { key: 'access', value: 'no', passes: () => false },
  { key: 'motor_vehicle', value: 'private', passes: () => false },
] as const;

/** Words of the OSM wiki that say a way is open, or that no limit is signed there (Key:access, Key:maxheight). */
const OPEN = new Set(
  'yes designated permissive public official none unlimited no default unsigned no_sign no_indications'.split(
    ' ',
  ),
);

/**
 * A limit never vanishes: a tag that bars is changed in one place, and unless its new text plainly says the road is
 * open or the figure is ample, the report still has something to say about that tag.
 */
export const limits = jsonTarget<Restriction>({
  name: 'a limit never vanishes',
  weight: 3,
  make(random) {
    const { key, value } = random.pick(BARRING);
    const at = random.below(value.length + 1);
    const sign = random.pick([
      ...' ;|,.\'"-0123456789mtxX()\u00a0\u200b~<>?',
      'st',
      ' ft',
      ' lbs',
      ' kg',
      ' @ (Mo)',
    ]);
    const changed = random.pick([
      () => value.slice(0, at) + sign + value.slice(at),
      () => value.slice(0, at) + sign + value.slice(at + 1),
      () => value.slice(0, at) + value.slice(at + 1),
      () => tagValue(random),
    ])();
    return { key, value: changed };
  },
  check({ key, value }) {
    if (saysOpen(key, value)) return undefined;
    const { findings } = reportOn({ tags: { highway: 'residential', [key]: value }, nodeTags: {} });
    if (findings.some(({ tags }) => Object.hasOwn(tags, key))) return undefined;
    return `${key}=${JSON.stringify(value)} is nowhere in the report`;
  },
});

/** A reading of our own, plain on purpose: one number with one unit, or a word. */
function saysOpen(key: string, value: string): boolean {
  const text = value.trim().toLowerCase();
  if (text === '' || OPEN.has(text)) return text !== 'no' || key.startsWith('max');
  const barring = BARRING.find((each) => each.key === key);
  const parts = text.split(/[;|]/).map((part) => figureOf(part, key));
  // each of several purposes is let in: one that is open to all opens it
  if (!key.startsWith('max') && text.split(';').some((part) => OPEN.has(part.trim()) && part.trim() !== 'no'))
    return true;
  return (
    barring !== undefined &&
    parts.every((figure) => figure === 'open' || (figure !== undefined && barring.passes(figure)))
  );
}

const METRES: Readonly<Record<string, number>> = {
  '': 1,
  m: 1,
  ft: 0.3048,
  "'": 0.3048,
  cm: 0.01,
  mm: 0.001,
};
const TONNES: Readonly<Record<string, number>> = {
  '': 1,
  t: 1,
  tonnes: 1,
  kg: 0.001,
  lbs: 0.000_453_6,
  st: 0.907,
};

/** Metres or tonnes; `open` for a lane without a limit. */
function figureOf(part: string, key: string): number | 'open' | undefined {
  const text = part.trim();
  if (text === '' || OPEN.has(text)) return 'open';
  const feet = /^(\d+)'\s*(\d+)"?$/.exec(text);
  if (feet !== null) return Number(feet[1]) * 0.3048 + Number(feet[2]) * 0.0254;
  const found = /^(\d*[.,]?\d+)\s*([a-z']*)$/.exec(text);
  const units = /weight|load/.test(key) ? TONNES : METRES;
  const unit = units[found?.[2] ?? ''];
  return found === null || unit === undefined ? undefined : Number(found[1]?.replace(',', '.')) * unit;
}
