import { BY_MOST } from '../../../geo/notes/bounds.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { counted } from '../../../geo/units/text.ts';
import { itemsNamed } from '../../services/library/find-item.ts';
import type { Library } from '../../services/library/library.ts';
import { localDay } from '../../services/local-day.ts';
import { acknowledge } from '../../services/yard/acknowledge.ts';
import { askedBy } from '../../services/yard/asked-by.ts';
import { type GridCell, type GridOf, knownCells } from '../../services/yard/grid/grid.ts';
import { gridOfLibrary } from '../../services/yard/yard-of.ts';
import { jsonText } from '../json-text.ts';
import { readWords, USAGE_HINT, type WordsRead } from '../read-words.ts';
import type { YardCommand } from './command.ts';
import { changesOf, printChanges } from './print-changes.ts';

/**
 * `yard changes`: what is otherwise than anybody has seen it. With `--seen-by` somebody has now: it is kept with the
 * initials and the date, for every computer, and told no more.
 */
export const yardChanges: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: ['seen-by'], several: ['drive', 'vehicle-id'], flags: ['json'] });
  if (!read.ok) return read;
  const by = read.value.one('seen-by')?.trim();
  if (by !== undefined && (by === '' || [...by].length > BY_MOST))
    return fail('usage', `--seen-by takes initials, 1 to ${BY_MOST} characters. ${USAGE_HINT}`);
  const of = gridOfLibrary(await askedBy(library, terminal));
  const named = pairsNamed(read.value, library);
  if (!named.ok) return named;
  const cells = (await knownCells(of)).filter((cell) => cell.changes.length > 0 && named.value(cell));
  if (by !== undefined) {
    const kept = await acknowledge({ library, grid: of }, cells, { by, on: localDay(terminal.now()) });
    if (!kept.ok) return kept;
  }
  const text = read.value.flag('json')
    ? jsonText({ changes: changesOf(cells), ...(by !== undefined && { seenBy: by }) })
    : sayChanges(of, cells, by);
  return ok({ text });
};

/** Which pairs are meant: those of the drives and vehicles named, or all. */
function pairsNamed(read: WordsRead, library: Library): Result<(cell: GridCell) => boolean> {
  const drives = itemsNamed(library, 'drive', read.all('drive'));
  if (!drives.ok) return drives;
  const vehicles = itemsNamed(library, 'vehicle', read.all('vehicle-id'));
  if (!vehicles.ok) return vehicles;
  const isOf = (items: readonly { readonly id: string }[], id: string) =>
    items.length === 0 || items.some((item) => item.id === id);
  return ok(({ drive, vehicle }) => isOf(drives.value, drive) && isOf(vehicles.value, vehicle));
}

function sayChanges(of: GridOf, cells: readonly GridCell[], by: string | undefined): string {
  if (cells.length === 0) return 'Nothing is otherwise than somebody has seen it.\n';
  const told = printChanges(of, cells).join('\n');
  const pairs = counted(cells.length, 'pair');
  return by === undefined
    ? `${told}\nWhen you have seen this: lanegauge yard changes --seen-by INITIALS.\n`
    : `${told}\nKept as seen by ${by} for ${pairs} of drive and vehicle, on every computer that shares this library.\n`;
}
