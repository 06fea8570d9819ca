import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { headsOf } from '../../../geo/library/heads.ts';
import { listRecords } from '../../../main/services/library/list-records.ts';
import { openLibrary } from '../../../main/services/library/open-library.ts';

const PROGRAM = '../../../.build/tests/support/library/edit-library.js';
/** The same where this module itself runs built. */
const BUILT = './edit-library.js';
const EDITOR = fileURLToPath(new URL(import.meta.url.endsWith('.js') ? BUILT : PROGRAM, import.meta.url));

/** What came of programs that changed one library and were killed. */
export interface Edited {
  /** changes that a program was told are kept */
  readonly kept: number;
  readonly kills: number;
  /** notes that had several versions in the end */
  readonly twice: number;
  /** what must not be: a sentence each */
  readonly wrong: readonly string[];
}

/**
 * Two programs change one library at the same time, each killed with SIGKILL at random moments and started anew, until
 * so many changes were told to be kept.
 * @param home an empty folder
 * @param livesMs how long each may live at most
 */
export async function killEditors(
  home: string,
  { changes, livesMs, random }: { changes: number; livesMs: number; random: () => number },
): Promise<Edited> {
  const folder = join(home, 'yard');
  const told: string[] = [];
  const wrong: string[] = [];
  let kills = 0;
  let seed = 0;
  const runOne = async (computer: string) => {
    while (told.length < changes && wrong.length === 0) {
      const child = spawn(process.execPath, [EDITOR, folder, join(home, computer), String(++seed)]);
      let said = '';
      child.stdout.on('data', (data) => {
        said += String(data);
      });
      child.stderr.on('data', (data) => wrong.push(String(data)));
      const gone = new Promise((resolve) => child.once('close', resolve));
      const begun = new Promise((resolve) => child.stdout.once('data', resolve));
      await Promise.race([begun, gone]);
      await Promise.race([wait(random() * livesMs), gone]);
      child.kill('SIGKILL');
      await gone;
      kills++;
      // a line cut off was not told
      for (const line of said.split('\n').slice(0, -1)) told.push(line);
    }
  };
  await Promise.all([runOne('a'), runOne('b')]);
  const twice = await judge(folder, home, told, wrong);
  return { kept: told.length, kills, twice, wrong };
}

/** Every change told is a record that lies there, and is a newest version or came before one. */
async function judge(
  folder: string,
  home: string,
  told: readonly string[],
  wrong: string[],
): Promise<number> {
  const listing = await listRecords(join(folder, 'records'));
  const library = await openLibrary({ folder, dataFolder: join(home, 'judge'), now: () => new Date() });
  const reached = new Set<string>();
  for (const item of library.list('note')) {
    const parents = new Map(listing?.items.get(item.id)?.map((file) => [file.name, file.parents]));
    const { heads } = headsOf(parents, () => 'sound');
    if (heads.join() !== item.heads.join()) wrong.push(`${item.id}: other versions are shown than lie there`);
    const waiting = [...item.heads];
    for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
      if (reached.has(name)) continue;
      reached.add(name);
      for (const parent of parents.get(name) ?? []) waiting.push(parent);
    }
  }
  for (const line of told) {
    const name = line.split(' ')[1] ?? '';
    if (!reached.has(name)) wrong.push(`${line}: told to be kept, and not there`);
  }
  for (const notice of library.notices()) wrong.push(notice);
  return library.list('note').filter(({ versions }) => versions.length > 1).length;
}
