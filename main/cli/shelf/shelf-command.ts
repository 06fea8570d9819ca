import { fail } from '../../../geo/result.ts';
import { askMeant } from '../../../geo/units/slips.ts';
import { clip } from '../../../geo/units/text.ts';
import { type Pace, REAL_PACE } from '../../services/fetch/pace.ts';
import type { ImportPart } from '../../services/shelf/put-on-shelf.ts';
import { sweepShelf } from '../../services/shelf/sweep-shelf.ts';
import { shelfFolder } from '../../services/shelf/where-shelf.ts';
import { USAGE_HINT } from '../read-words.ts';
import { EXIT_INTERRUPTED, refuse, type Terminal } from '../terminal.ts';
import type { ShelfCommand } from './command.ts';
import { shelfFetch } from './fetch.ts';
import { shelfImport } from './import.ts';
import { shelfList } from './list.ts';
import { shelfRemove } from './remove.ts';
import { shelfVerify } from './verify.ts';

const COMMANDS: Readonly<Record<string, ShelfCommand>> = {
  fetch: shelfFetch,
  import: shelfImport,
  list: shelfList,
  verify: shelfVerify,
  remove: shelfRemove,
};

/** In place of the program's own: what takes a file in, and the clock that fetching waits by. */
interface StandIns {
  readonly importPart?: ImportPart;
  readonly pace?: Pace;
}

/**
 * `lanegauge shelf …`.
 * @returns 0 done, 1 something is damaged, 2 input could not be used, 130 interrupted
 */
export async function shelfCommand(
  words: readonly string[],
  terminal: Terminal,
  stand: StandIns = {},
): Promise<number> {
  const [name, ...rest] = words;
  const command = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined) return refuse(sayUnknown(name), terminal);
  const shelf = shelfFolder(terminal.dataFolder);
  await sweepShelf(shelf, terminal.now().getTime());
  const done = await command(rest, terminal, {
    shelf,
    importPart:
      stand.importPart ?? (await import('../../services/shelf/import-with-words.ts')).importWithWords,
    now: terminal.now,
    pace: stand.pace ?? REAL_PACE,
  });
  terminal.progress.clear();
  if (terminal.signal.aborted) return EXIT_INTERRUPTED;
  if (!done.ok) return refuse(done.error.message, terminal);
  terminal.out(done.value.text);
  return done.value.exit;
}

function sayUnknown(name: string | undefined): string {
  const known = Object.keys(COMMANDS);
  const said =
    name === undefined
      ? 'shelf needs a word after it.'
      : `There is no 'shelf ${clip(name)}'${askMeant(name, known, (word) => `'shelf ${word}'`)}.`;
  return fail('usage', `${said} They are: ${known.join(', ')}. ${USAGE_HINT}`).error.message;
}
