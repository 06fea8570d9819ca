import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { writeRecord } from '../../../geo/library/write-record.ts';
import { sha256Of } from '../../../main/services/library/known-records.ts';
import { openLibrary } from '../../../main/services/library/open-library.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { mutateJson } from '../make/mutate-json.ts';
import { faultInSentences } from '../promises.ts';
import type { Target } from '../target.ts';

const note = (id: string, say: string, parents: readonly string[] = []) =>
  writeRecord(
    { kind: 'note', id, parents, made: '', body: { at: { lat: 54, lon: 9 }, say, heightM: 3.4 } },
    sha256Of,
  );
const FIRST = note('note-1', 'Gate');
const SECOND = note('note-1', 'Gate, 3.4 m', [FIRST.name]);
const OTHER = note('note-2', 'Low branch');
const NAMES = [
  SECOND.file,
  `${SECOND.file.slice(0, -5)} (copy).json`,
  FIRST.file,
  `first-${'0'.repeat(20)}.json`,
  `${SECOND.name}-${'1'.repeat(20)}.json`,
];

const root = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-library-'));
const folder = join(root, 'yard');

/** One file more, or one damaged, among the records of two notes. The first byte says under which name. */
export const libraryRecords: Target = {
  name: 'records of the library',
  weight: 2,
  make(random) {
    const text = new TextEncoder().encode(SECOND.text);
    const json = new TextEncoder().encode(`${JSON.stringify(mutateJson(JSON.parse(SECOND.text), random))}\n`);
    return Uint8Array.from([
      random.below(NAMES.length),
      ...(random.chance(0.5) ? mutateBytes(text, random) : json),
    ]);
  },
  async check(input) {
    rmSync(root, { recursive: true, force: true });
    const put = (path: string, content: string | Uint8Array) => {
      mkdirSync(dirname(join(folder, 'records', path)), { recursive: true });
      writeFileSync(join(folder, 'records', path), content);
    };
    for (const { file, text } of [FIRST, SECOND]) put(join('note-1', file), text);
    put(join('note-2', OTHER.file), OTHER.text);
    put(join('note-1', NAMES[input[0]!]!), input.slice(1));
    const library = await openLibrary({ folder, dataFolder: join(root, 'data'), now: () => new Date(0) });
    const fault = faultInSentences(library.notices());
    if (fault !== undefined) return fault;
    if (library.find('note', 'note-2')?.versions[0]?.name !== OTHER.name)
      return 'a sound record is not shown';
    if ((library.find('note', 'note-1')?.versions.length ?? 0) === 0) return 'what came before is not shown';
    return readdirSync(join(folder, 'records', 'note-1')).length < 2 ? 'a file is gone' : undefined;
  },
};
