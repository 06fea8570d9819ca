import { given } from '../../../geo/given.ts';
import { printable, quote } from '../../../geo/units/text.ts';
import type { GridCell, GridOf } from '../../services/yard/grid/grid.ts';

/** What is otherwise, for programs. */
export function changesOf(cells: readonly GridCell[]) {
  return cells.flatMap(({ drive, vehicle, changes }) =>
    changes.map(({ kind, finding, was, now }) => ({ drive, vehicle, kind, finding, ...given({ was, now }) })),
  );
}

/** The same in lines, drive by drive and vehicle by vehicle; none where nothing is otherwise. */
export function printChanges({ drives, vehicles }: GridOf, cells: readonly GridCell[]): string[] {
  return drives.flatMap((drive) => {
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
}
