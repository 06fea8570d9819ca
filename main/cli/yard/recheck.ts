import { given } from '../../../geo/given.ts';
import { ok } from '../../../geo/result.ts';
import { counted, printable, quote } from '../../../geo/units/text.ts';
import type { GridCell, GridOf } from '../../services/yard/grid/grid.ts';
import { gridOfLibrary } from '../../services/yard/yard-of.ts';
import { jsonText } from '../json-text.ts';
import { readWords } from '../read-words.ts';
import type { YardCommand } from './command.ts';
import { askedBy, whyNothing } from './grid.ts';
import { judgeAll } from './judge-all.ts';

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
    : (whyNothing(of, library) ?? printChanges(of, cells));
  return ok({ text, refused: failed.map(({ name, say }) => `${name}: ${say}`) });
};

function changesOf(cells: readonly GridCell[]) {
  return cells.flatMap(({ drive, vehicle, changes }) =>
    changes.map(({ kind, finding, was, now }) => ({ drive, vehicle, kind, finding, ...given({ was, now }) })),
  );
}

function printChanges({ drives, vehicles }: GridOf, cells: readonly GridCell[]): string {
  if (cells.length === 0) return 'Everything was up to date: nothing was checked again.\n';
  const lines = drives.flatMap((drive) => {
    const changed = cells.filter((cell) => cell.drive === drive.id && cell.changes.length > 0);
    if (changed.length === 0) return [];
    return [
      quote(drive.name, 100),
      ...changed.flatMap(({ vehicle, changes }) => [
        `  ${printable(vehicles.find(({ id }) => id === vehicle)?.card.name ?? vehicle)}`,
        ...changes.map(({ kind, say }) => `    ${kind}: ${printable(say)}`),
      ]),
    ];
  });
  const done = `${counted(cells.length, 'pair')} of drive and vehicle checked.`;
  return `${[...lines, lines.length === 0 ? `${done} Nothing is otherwise than before.` : done].join('\n')}\n`;
}
