import { given } from '../given.ts';
import { csvText } from '../units/csv.ts';
import type { Cell } from './cell.ts';
import type { Stale } from './made-of.ts';

interface Named {
  readonly id: string;
  readonly name: string;
}

/** A grid: its drives, its vehicles, and what is known of each pair. */
export interface Grid {
  readonly drives: readonly Named[];
  readonly vehicles: readonly Named[];
  readonly cells: readonly {
    readonly drive: string;
    readonly vehicle: string;
    readonly cell: Cell;
    readonly stale: readonly Stale[];
    /** what is otherwise than a person has seen it */
    readonly changes?: readonly unknown[];
  }[];
}

/** A grid for programs: cells drive by drive, in the order of the vehicles. */
export function gridTold({ drives, vehicles, cells }: Grid) {
  const named = ({ id, name }: Named) => ({ id, name });
  const pairs = new Map(cells.map((each) => [pairOf(each.drive, each.vehicle), each]));
  return {
    drives: drives.map(named),
    vehicles: vehicles.map(named),
    cells: drives.flatMap((drive) =>
      vehicles.flatMap((vehicle) => {
        const found = pairs.get(pairOf(drive.id, vehicle.id));
        if (found === undefined) return [];
        const { verdict, counts, tightest } = found.cell;
        const stale = found.stale.length > 0 ? found.stale : undefined;
        return [{ drive: drive.id, vehicle: vehicle.id, verdict, counts, ...given({ tightest, stale }) }];
      }),
    ),
  };
}

function pairOf(drive: string, vehicle: string): string {
  return JSON.stringify([drive, vehicle]);
}

const HEAD = [
  'drive',
  'drive id',
  'vehicle',
  'vehicle id',
  'stale',
  'verdict',
  'barred',
  'tight',
  'unknown',
  'care',
  'tightest',
  'spare',
  'unit',
];

/** A grid for a spreadsheet: one row a pair, all of equal length. */
export function gridCsv(grid: Grid): string {
  const { drives, vehicles, cells } = gridTold(grid);
  const names = new Map([...drives, ...vehicles].map(({ id, name }) => [id, name]));
  return csvText([
    HEAD,
    ...cells.map(({ drive, vehicle, verdict, counts, tightest, stale = [] }) => [
      names.get(drive),
      drive,
      names.get(vehicle),
      vehicle,
      stale.join(' '),
      verdict,
      counts.barred,
      counts.tight,
      counts.unknown,
      counts.care,
      tightest?.subject,
      tightest?.spare,
      tightest?.unit,
    ]),
  ]);
}
