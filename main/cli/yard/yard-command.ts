import { resolve } from 'node:path';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { askMeant } from '../../../geo/units/slips.ts';
import { clip } from '../../../geo/units/text.ts';
import type { Library } from '../../services/library/library.ts';
import { openLibraryPlace } from '../../services/library/library-place.ts';
import { openLibrary } from '../../services/library/open-library.ts';
import { moveIn } from '../../services/moved-in/move-in.ts';
import { openRecents } from '../../services/recents/recents-store.ts';
import { pathFrom, USAGE_HINT } from '../read-words.ts';
import { EXIT_INTERRUPTED, EXIT_UNUSABLE, refuse, type Terminal } from '../terminal.ts';
import { yardAdd } from './add.ts';
import { yardBack } from './back.ts';
import { yardChoose, yardRename, yardRestore } from './change.ts';
import { yardChanges } from './changes.ts';
import type { YardCommand, YardSaid } from './command.ts';
import { yardDay } from './day.ts';
import { yardGrid } from './grid.ts';
import { yardList } from './list.ts';
import { noteAdd } from './note-add.ts';
import { noteExport, noteForMappers, noteImport } from './note-files.ts';
import { noteList } from './notes.ts';
import { yardOut } from './out.ts';
import { yardPlace } from './place.ts';
import { yardRecheck } from './recheck.ts';
import { noteRemove, vehicleRemove, yardRemove } from './remove.ts';
import { yardSheet } from './sheet.ts';
import { vehicleAdd } from './vehicles.ts';

const COMMANDS: Readonly<Record<string, YardCommand>> = {
  add: yardAdd,
  list: yardList,
  remove: yardRemove,
  rename: yardRename,
  restore: yardRestore,
  choose: yardChoose,
  grid: yardGrid,
  recheck: yardRecheck,
  changes: yardChanges,
  sheet: yardSheet,
  out: yardOut,
  back: yardBack,
  day: yardDay,
  'vehicle add': vehicleAdd,
  'vehicle remove': vehicleRemove,
  'note add': noteAdd,
  'note list': noteList,
  'note export': noteExport,
  'note import': noteImport,
  'note for-mappers': noteForMappers,
  'note remove': noteRemove,
};
/** Words that need a second one to be a command. */
const FIRST_OF_TWO = new Set(['vehicle', 'note']);

/** A disk is waited for so long before what was last seen has to do. */
const WAIT_MS = 60_000;

/**
 * `lanegauge yard …`.
 * @returns 0 done, 2 input could not be used, 130 interrupted
 */
export async function yardCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const taken = takeYard(words);
  if (!taken.ok) return refuse(taken.error.message, terminal);
  const [first, second] = taken.value.words;
  const two = first !== undefined && FIRST_OF_TWO.has(first);
  const name = two ? `${first} ${second ?? ''}`.trim() : first;
  const rest = taken.value.words.slice(two ? 2 : 1);
  if (name === 'place') return finish(await choosePlace(rest, terminal), terminal);
  const command = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined) return refuse(sayUnknown(name), terminal);
  const library = await openYard(taken.value.folder, terminal);
  return finish(await command(rest, terminal, library), terminal);
}

function finish(done: Result<YardSaid>, terminal: Terminal): number {
  if (terminal.signal.aborted) return EXIT_INTERRUPTED;
  if (!done.ok) return refuse(done.error.message, terminal);
  terminal.out(done.value.text);
  for (const sentence of done.value.refused ?? []) terminal.complain(sentence);
  return (done.value.refused ?? []).length > 0 ? EXIT_UNUSABLE : 0;
}

async function choosePlace(words: readonly string[], terminal: Terminal): Promise<Result<YardSaid>> {
  const place = await openLibraryPlace(terminal.dataFolder, terminal.now);
  return yardPlace(words, place, (typed) => resolve(terminal.folder, typed));
}

/** The library named, or this computer's, with what was kept before there was one. */
async function openYard(named: string | undefined, terminal: Terminal): Promise<Library> {
  const { dataFolder, now } = terminal;
  const place = await openLibraryPlace(dataFolder, now);
  const folder = named === undefined ? place.folder() : pathFrom(terminal.folder, named);
  const library = await openLibrary({ folder, dataFolder, now, waitMs: WAIT_MS });
  const notices = [...place.notices()];
  if (named === undefined) {
    const moved = await moveIn(dataFolder, library, now);
    await moved.moveDrives(await openRecents(dataFolder, now));
    for (const notice of moved.notices) notices.push(notice);
  }
  await library.sweep();
  for (const notice of [...notices, ...library.notices()]) terminal.complain(notice);
  return library;
}

/** `--yard FOLDER`, wherever it stands. */
function takeYard(words: readonly string[]): Result<{ folder?: string; words: string[] }> {
  const rest: string[] = [];
  const folders: (string | undefined)[] = [];
  for (let i = 0; i < words.length; i++) {
    const word = words[i] ?? '';
    if (word === '--yard') folders.push(words[++i]);
    else if (word.startsWith('--yard=')) folders.push(word.slice('--yard='.length));
    else rest.push(word);
  }
  const [folder] = folders;
  if (folders.length > 1)
    return fail('usage', `--yard is given ${folders.length} times; one is wanted. ${USAGE_HINT}`);
  if (folders.length === 1 && (folder === undefined || folder === '' || folder.startsWith('--')))
    return fail('usage', `--yard needs a folder after it. ${USAGE_HINT}`);
  return ok({ words: rest, ...(folder === undefined ? {} : { folder }) });
}

function sayUnknown(name: string | undefined): string {
  const known = [...Object.keys(COMMANDS), 'place'];
  const said =
    name === undefined
      ? 'yard needs a word after it.'
      : `There is no 'yard ${clip(name)}'${askMeant(name, known, (word) => `'yard ${word}'`)}.`;
  return `${said} They are: ${known.join(', ')}. ${USAGE_HINT}`;
}
