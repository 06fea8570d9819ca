import { ok } from '../../../geo/result.ts';
import { counted, listed, quote } from '../../../geo/units/text.ts';
import { listMaps } from '../../services/shelf/list-maps.ts';
import { askedBy } from '../../services/yard/asked-by.ts';
import type { GridCell, GridOf } from '../../services/yard/grid/grid.ts';
import { gridOfLibrary } from '../../services/yard/yard-of.ts';
import { jsonText } from '../json-text.ts';
import { readWords } from '../read-words.ts';
import type { YardCommand } from './command.ts';
import { whyNothing } from './grid.ts';
import { judgeAll } from './judge-all.ts';
import { changesOf, printChanges } from './print-changes.ts';

/** `yard recheck`: checks again what is old, and tells what is otherwise than it was when a person last saw it. */
export const yardRecheck: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json'] });
  if (!read.ok) return read;
  const of = gridOfLibrary(await askedBy(library, terminal));
  const judged = await judgeAll(of, 'stale', terminal);
  if (!judged.ok) return judged;
  const { cells, failed } = judged.value;
  const text = read.value.flag('json')
    ? jsonText({ changes: changesOf(cells) })
    : (whyNothing(of, library) ?? (cells.length === 0 ? await sayUpToDate(of) : sayRechecked(of, cells)));
  return ok({ text, refused: failed.map(({ name, say }) => `${name}: ${say}`) });
};

/** Nothing is up to date with a map that cannot be read: the pairs there say what it said when it could. */
async function sayUpToDate({ shelf }: GridOf): Promise<string> {
  const damaged = (await listMaps(shelf)).filter(({ state }) => state === 'damaged');
  if (damaged.length === 0)
    return 'Nothing has changed since it was checked: nothing was checked again. Whether all of the maps can still be read is told by: lanegauge shelf verify\n';
  const maps = listed(damaged.map(({ name }) => quote(name)));
  return `Nothing was checked again, but ${maps} on the shelf ${damaged.length === 1 ? 'is' : 'are'} damaged: pairs there say what was known while all of it could be read. Mend with: lanegauge shelf verify --repair, then recheck.\n`;
}

function sayRechecked(of: GridOf, cells: readonly GridCell[]): string {
  const lines = printChanges(of, cells);
  const done = `${counted(cells.length, 'pair')} of drive and vehicle checked.`;
  const more =
    lines.length === 0
      ? `${done} Nothing is otherwise than before.`
      : `${done} It stays listed by lanegauge yard changes until somebody has seen it: lanegauge yard changes --seen-by INITIALS.`;
  return `${[...lines, more].join('\n')}\n`;
}
