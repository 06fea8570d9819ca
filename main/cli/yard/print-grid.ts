import { largest } from '../../../geo/lists.ts';
import { LEVEL_WORD } from '../../../geo/report/level.ts';
import { STANDING_CAUTION } from '../../../geo/report/standing-caution.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import { capital, clip, printable, quote } from '../../../geo/units/text.ts';
import type { Grid } from '../../../geo/yard/grid-told.ts';
import { sayCounts, sayNoCell, sayStale, sayTightest } from '../../../geo/yard/say-cell.ts';
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
      const says = found
        ? [
            LEVEL_WORD[found.cell.verdict],
            sayCounts(found.cell.counts),
            sayTightest(found.cell, units),
            sayStale(found.stale),
          ]
        : [capital(sayNoCell(why))];
      return `  ${clip(vehicle.name, NAME_MOST).padEnd(room)}  ${printable(says.filter((part) => part !== '').join('; '))}`;
    });
    return [quote(name, 100), ...lines].join('\n');
  });
  const old = cells.some(({ stale }) => stale.length > 0)
    ? ['Some of it is old: lanegauge yard recheck checks that again and tells what is otherwise.']
    : [];
  return `${[...blocks, ...old, STANDING_CAUTION].join('\n\n')}\n`;
}
