import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { type Body, ITEM_KINDS, type Kind } from '../../../geo/library/record.ts';
import { nameOfHash, recordFile } from '../../../geo/library/record-name.ts';
import { writeRecord } from '../../../geo/library/write-record.ts';
import { sha256Of } from '../../../main/services/files/sha256.ts';
import { handedSheets } from '../../../main/services/handed/handed-sheets.ts';
import { notesOf } from '../../../main/services/library/local-notes.ts';
import { openLibrary } from '../../../main/services/library/open-library.ts';
import { showYard } from '../../../main/services/yard/show-yard.ts';
import { COACH_BUILT } from '../../main/contract/cards.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { mutateJson } from '../make/mutate-json.ts';
import { faultInSentences } from '../promises.ts';
import type { Target } from '../target.ts';

const HASH = 'a'.repeat(64);
const ITEMS = [{ name: 'Crate', massKg: 30, xM: 4 }];
const BODIES: { readonly [K in Kind]: Body<K> } = {
  drive: {
    gpx: HASH,
    file: 'coast.gpx',
    track: 1,
    trackName: 'Coast',
    lengthM: 9000,
    from: [50, 7],
    to: [50, 7.1],
  },
  vehicle: { vehicleId: 'heron', card: COACH_BUILT },
  load: { vehicleId: 'heron', items: ITEMS },
  note: { at: { lat: 54, lon: 9 }, say: 'Gate', heightM: 3.4 },
  handed: {
    number: 'K7QM-4XPD',
    files: [{ name: 'sheet.html', sha256: HASH }],
    program: 'Lanegauge',
    driveName: 'Coast',
    vehicleName: 'Heron',
    gpx: HASH,
    card: HASH,
    notes: [],
    maps: [{ name: 'vale', sha256: HASH }],
    leaveAt: '2027-06-12T09:30',
  },
  seen: {
    drive: 'd-1',
    vehicle: 'v-1',
    by: 'AB',
    on: '2027-06-12',
    changes: [{ kind: 'new', finding: 'x' }],
  },
  back: { number: 'K7QM-4XPD', on: '2027-06-12' },
};

/** An item of each kind in two versions, and what another computer made of the first at the same time. */
const KEPT = ITEM_KINDS.map((kind) => {
  const id = `${kind}-1`;
  const written = (made: string, parents: readonly string[]) =>
    writeRecord({ kind, id, parents, made, body: BODIES[kind] }, sha256Of);
  const first = written('1', []);
  return { kind, id, first, second: written('2', [first.name]) };
});
const OTHER = writeRecord(
  { kind: 'note', id: 'note-2', parents: [], made: '', body: { ...BODIES.note, say: 'Low branch' } },
  sha256Of,
);

/** How a file more, or a damaged one, is called: as ours, as a copy, or as what it does not hold. */
const NAMED: readonly ((kept: (typeof KEPT)[number], text: string) => string)[] = [
  ({ second }) => second.file,
  ({ second }) => `${second.file.slice(0, -5)} (copy).json`,
  ({ first }) => first.file,
  () => `first-${'0'.repeat(20)}.json`,
  ({ second }) => `${second.name}-${'1'.repeat(20)}.json`,
  ({ first }, text) => recordFile([first.name], nameOfHash(sha256Of(text))),
  (_, text) => recordFile([], nameOfHash(sha256Of(text))),
];

const root = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-library-'));
const folder = join(root, 'yard');

/** One file more, or one damaged, among the records of an item. The first bytes say of which kind and under which name. */
export const libraryRecords: Target = {
  name: 'records of the library',
  weight: 3,
  make(random) {
    const which = random.below(KEPT.length);
    const { text } = KEPT[which]!.second;
    const made = random.chance(0.3)
      ? mutateBytes(new TextEncoder().encode(text), random)
      : new TextEncoder().encode(`${JSON.stringify(mutateJson(JSON.parse(text), random))}\n`);
    return Uint8Array.from([which, random.below(NAMED.length), ...made]);
  },
  async check(input) {
    rmSync(root, { recursive: true, force: true });
    const put = (path: string, content: string | Uint8Array) => {
      mkdirSync(dirname(join(folder, 'records', path)), { recursive: true });
      writeFileSync(join(folder, 'records', path), content);
    };
    const kept = KEPT[input[0]!]!;
    for (const { file, text } of [kept.first, kept.second]) put(join(kept.id, file), text);
    put(join('note-2', OTHER.file), OTHER.text);
    const content = input.slice(2);
    put(join(kept.id, NAMED[input[1]!]!(kept, Buffer.from(content).toString())), content);
    const library = await openLibrary({ folder, dataFolder: join(root, 'data'), now: () => new Date(0) });
    if (library.find('note', 'note-2')?.versions[0]?.name !== OTHER.name)
      return 'a sound record is not shown';
    const { apart, notices } = await showYard(library, { units: 'metric' });
    handedSheets(library);
    notesOf(library);
    const fault = faultInSentences([
      ...notices,
      ...apart.flatMap(({ versions }) => versions.flatMap(({ says }) => says)),
    ]);
    if (fault !== undefined) return fault;
    return readdirSync(join(folder, 'records', kept.id)).length < 2 ? 'a file is gone' : undefined;
  },
};
