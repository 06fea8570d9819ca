import { ok } from '../../../geo/result.ts';
import { counted } from '../../../geo/units/text.ts';
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
    : (whyNothing(of, library) ?? sayRechecked(of, cells));
  return ok({ text, refused: failed.map(({ name, say }) => `${name}: ${say}`) });
};

function sayRechecked(of: GridOf, cells: readonly GridCell[]): string {
  if (cells.length === 0) return 'Everything was up to date: nothing was checked again.\n';
  const lines = printChanges(of, cells);
  const done = `${counted(cells.length, 'pair')} of drive and vehicle checked.`;
  const more =
    lines.length === 0
      ? `${done} Nothing is otherwise than before.`
      : `${done} It stays listed by lanegauge yard changes until somebody has seen it: lanegauge yard changes --seen-by INITIALS.`;
  return `${[...lines, more].join('\n')}\n`;
}
