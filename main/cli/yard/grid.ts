import { basename } from 'node:path';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { gridCsv, gridTold } from '../../../geo/yard/grid-told.ts';
import { FLEET_MAX } from '../../contract/limits.ts';
import type { Library } from '../../services/library/library.ts';
import { namedVehicle } from '../../services/library/named-vehicle.ts';
import { askedBy } from '../../services/yard/asked-by.ts';
import { type GridCell, type GridOf, type GridVehicle, knownCells } from '../../services/yard/grid/grid.ts';
import { gridOf, gridOfLibrary } from '../../services/yard/yard-of.ts';
import { jsonText } from '../json-text.ts';
import { pathFrom, readWords, USAGE_HINT } from '../read-words.ts';
import type { Terminal } from '../terminal.ts';
import type { YardCommand } from './command.ts';
import { judgeAll } from './judge-all.ts';
import { printGrid } from './print-grid.ts';

/**
 * `yard grid`: every drive with every vehicle. What was never checked is; what is old is shown with why, until
 * `yard recheck`. With `--vehicle` exactly those cards are checked, all anew, and nothing is kept.
 */
export const yardGrid: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: [], several: ['vehicle'], flags: ['json', 'csv'] });
  if (!read.ok) return read;
  const { all, flag } = read.value;
  if (flag('json') && flag('csv'))
    return fail('usage', `--json and --csv are two forms of the same: choose one. ${USAGE_HINT}`);
  const named = all('vehicle');
  const cards = named.length === 0 ? undefined : await readCards(named, terminal, library);
  if (cards?.ok === false) return cards;
  const asked = await askedBy(library, terminal);
  const of = cards === undefined ? gridOfLibrary(asked) : gridOf(asked, cards.value);
  const nothing = whyNothing(of, library);
  const judged = await judgeAll(of, 'missing', terminal);
  if (!judged.ok) return judged;
  const { failed, cells: fresh } = judged.value;
  const cells: readonly GridCell[] = cards === undefined ? await knownCells(of) : fresh;
  const grid = {
    drives: of.drives,
    vehicles: of.vehicles.map(({ id, card }) => ({ id, name: card.name })),
    cells,
  };
  const text = flag('json')
    ? jsonText(gridTold(grid))
    : flag('csv')
      ? gridCsv(grid)
      : (nothing ?? printGrid(grid, failed, of.units));
  return ok({ text, refused: failed.map(({ name, say }) => `${name}: ${say}`) });
};

/** A sentence where there is nothing to check. */
export function whyNothing({ drives, vehicles }: GridOf, { folder }: Library): string | undefined {
  if (drives.length === 0)
    return `The library in ${folder} holds no drive. Put some there with: lanegauge yard add DRIVE.gpx\n`;
  if (vehicles.length === 0)
    return `The library in ${folder} holds no vehicle. Put one there with: lanegauge yard vehicle add CARD.json\n`;
  return undefined;
}

/** Each by its card's file, or by its id or name in the library; the same one named twice stands there once. */
async function readCards(
  paths: readonly string[],
  terminal: Terminal,
  library: Library,
): Promise<Result<GridVehicle[]>> {
  if (paths.length > FLEET_MAX)
    return fail(
      'usage',
      `--vehicle is given ${paths.length} times; ${FLEET_MAX} are the most. ${USAGE_HINT}`,
    );
  const vehicles: GridVehicle[] = [];
  for (const path of paths) {
    const typed = { typed: path, path: pathFrom(terminal.folder, path) };
    const found = await namedVehicle(typed, async () => library);
    if (!found.ok) return found;
    const { card, id } = found.value;
    if (id !== undefined) {
      if (vehicles.every((each) => each.id !== id)) vehicles.push({ id, card });
      continue;
    }
    const name = basename(path).replace(/\.json$/i, '');
    const same = vehicles.filter(({ id }) => id === name || id.startsWith(`${name} (`)).length;
    vehicles.push({ id: same === 0 ? name : `${name} (${same + 1})`, card });
  }
  return ok(vehicles);
}
