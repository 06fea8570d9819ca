import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { mapFolder } from '../../../main/services/shelf/shelf-folder.ts';
import { importMap } from '../../../main/services/shelf/shelf-work.ts';
import { importByHand } from '../../support/shelf/import-by-hand.ts';
import { servedBy, writeVersion } from '../../support/shelf/two-maps.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { randomFrom } from '../make/random.ts';
import { jsonTarget } from '../target.ts';

interface Damage {
  /** which files are written over, by their place in the folder */
  readonly files: readonly number[];
  readonly seed: number;
}

const shelf = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-damaged-'));
const folder = mapFolder(shelf, 'Vale');
let sound: Promise<{ readonly files: ReadonlyMap<string, Buffer>; readonly says: string }> | undefined;

async function takeIn() {
  const path = writeVersion(shelf, 3, 12);
  const taken = await importMap(
    { shelf, importPart: importByHand, now: () => new Date('2027-06-12T09:30:00Z') },
    { name: 'Vale', files: [{ path, name: 'vale', stays: false }], origin: { by: 'file' } },
    { signal: new AbortController().signal, onProgress: () => {} },
  );
  if (!taken.ok) throw new Error(taken.error.message);
  const names = readdirSync(folder, { withFileTypes: true }).flatMap((each) =>
    each.isFile() ? [each.name] : [],
  );
  const files = new Map(names.map((name) => [name, readFileSync(join(folder, name))]));
  return { files, says: await servedBy(shelf) };
}

/** Whatever of a map's files is damaged, a check says what it said before, or that the map is damaged. */
export const damagedShelf = jsonTarget<Damage>({
  name: 'a damaged shelf',
  weight: 4,
  make: (random) => ({
    files: Array.from({ length: 1 + random.below(2) }, () => random.below(8)),
    seed: random.below(2 ** 31),
  }),
  async check({ files: which, seed }) {
    sound ??= takeIn();
    const { files, says } = await sound;
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder);
    const random = randomFrom(seed);
    const changed = which.map((place) => [...files.keys()][place % files.size]);
    for (const [name, bytes] of files)
      writeFileSync(join(folder, name), changed.includes(name) ? mutateBytes(bytes, random) : bytes);
    const served = await servedBy(shelf);
    if (served === says || /damaged|another version|cannot be read/u.test(served)) return undefined;
    return `with ${changed.join(' and ')} changed it says ${served.slice(0, 300)}`;
  },
});
