/**
 * A program that changes notes of a library without end, as `edit-library.js FOLDER DATA SEED`: each change on what it
 * knows, which is not always the newest. Once a change is kept it says so on a line: the note, and the record's name.
 */
import { writeSync } from 'node:fs';
import { openLibrary } from '../../../main/services/library/open-library.ts';
import { seeded } from '../random-drives.ts';

const [folder = '', dataFolder = '', seed = '1'] = process.argv.slice(2);
const NOTES = 40;
/** So many changes are under way at once, as from several windows; after so many rounds it looks again. */
const AT_ONCE = 8;
const LOOKS_AFTER = 10;

const random = seeded(Number(seed));
const library = await openLibrary({ folder, dataFolder, now: () => new Date() });
for (let round = 0; ; round++) {
  if (round % LOOKS_AFTER === 0) await library.refresh();
  await Promise.all(Array.from({ length: AT_ONCE }, (_, i) => change(round * AT_ONCE + i)));
}

async function change(number: number): Promise<void> {
  const id = `note-${Math.floor(random() * NOTES)}`;
  const heads = library.find('note', id)?.heads ?? [];
  const body = { at: { lat: 54, lon: 9 }, say: `${seed}/${number}` };
  const kept = await library.put({ kind: 'note', id, body, over: heads });
  if (!kept.ok) throw new Error(kept.error.message);
  const name = kept.value.versions.find(({ body: { say } }) => say === body.say)?.name;
  // one made meanwhile on the same version stands beside it, one made on it has taken its place
  if (name !== undefined) writeSync(1, `${id} ${name}\n`);
}
