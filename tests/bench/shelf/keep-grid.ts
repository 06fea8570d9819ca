import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { openShelf } from '../../../main/services/shelf/open-shelf.ts';
import { shelfFolder } from '../../../main/services/shelf/where-shelf.ts';
import { makeGridMap } from './make-grid-map.ts';

const PROGRAM = '.build/program/cli/main.js';
const BENCH_FOLDER = '.bench';

/** A made map and the data folder whose shelf holds it. */
export interface KeptGrid {
  readonly megabytes: number;
  readonly path: string;
  readonly home: string;
  readonly roads: number;
}

/** A grid map of so many megabytes on a shelf of its own, imported once. @param folder of the extracts */
export async function keepGrid(folder: string, megabytes: number): Promise<KeptGrid> {
  const path = makeGridMap(folder, megabytes);
  const home = join(BENCH_FOLDER, `home-${megabytes}`);
  let roads = await roadsIn(home);
  if (roads === 0 || statSync(home).mtimeMs < statSync(path).mtimeMs) {
    mkdirSync(home, { recursive: true });
    execFileSync(process.execPath, [PROGRAM, 'shelf', 'import', path], {
      env: { ...process.env, LANEGAUGE_HOME: home },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    roads = await roadsIn(home);
  }
  return { megabytes, path, home, roads };
}

async function roadsIn(home: string): Promise<number> {
  if (!existsSync(home)) return 0;
  const shelf = await openShelf(shelfFolder(home));
  const roads = shelf.parts.reduce((sum, { part }) => sum + part.meta.roads, 0);
  shelf.close();
  return roads;
}
