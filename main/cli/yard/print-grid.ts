import { largest } from '../../../geo/lists.ts';
import { STANDING_CAUTION } from '../../../geo/report/standing-caution.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import { capital, clip, counted, printable, quote } from '../../../geo/units/text.ts';
import type { Grid } from '../../../geo/yard/grid-told.ts';
import { sayCell, sayNoCell } from '../../../geo/yard/say-cell.ts';
import type { FailedDrive } from './judge-all.ts';

const NAME_MOST = 28;

/** The grid for whoever reads it in a terminal: drive by drive, a line a vehicle. */
export function printGrid(grid: Grid, failed: readonly FailedDrive[], units: Units): string {
  const { drives, vehicles, cells } = grid;
  const room = largest(vehicles.map(({ name }) => [...clip(name, NAME_MOST)].length));
  const pairs = new Map(cells.map((each) => [JSON.stringify([each.drive, each.vehicle]), each]));
  const blocks = drives.map(({ id, name }) => {
    const why = failed.find((each) => each.id === id)?.say;
    const lines = vehicles.map((vehicle) => {
      const found = pairs.get(JSON.stringify([id, vehicle.id]));
      const says = found ? sayCell(found, units) : capital(sayNoCell(why));
      return `  ${clip(vehicle.name, NAME_MOST).padEnd(room)}  ${printable(says)}`;
    });
    return [quote(name, 100), ...lines].join('\n');
  });
  return `${[...toDo(cells), ...blocks, STANDING_CAUTION].join('\n\n')}\n`;
}

/** What somebody has to see to, before anything is believed. */
function toDo(cells: Grid['cells']): string[] {
  const old = cells.filter(({ stale }) => stale.length > 0).length;
  const changed = cells.filter(({ changes = [] }) => changes.length > 0).length;
  return [
    ...(old === 0
      ? []
      : [
          `${old} of ${counted(cells.length, 'pair')} ${old === 1 ? 'is' : 'are'} out of date: lanegauge yard recheck checks that again and tells what is otherwise.`,
        ]),
    ...(changed === 0
      ? []
      : [
          `Of ${counted(changed, 'pair')} something is otherwise than anybody has seen: lanegauge yard changes.`,
        ]),
  ];
}
