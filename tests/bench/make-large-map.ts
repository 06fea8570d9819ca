import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';

const BENCH_FOLDER = '.bench';

/** An extract as lines of osmium's OPL text, in the file's order. */
interface Extract {
  readonly lines: readonly string[];
  readonly highestId: number;
}

/**
 * A PBF of at least so many megabytes: the extracts over and over, each copy half a degree further east with ids of
 * its own, sorted by type and id. Made once and kept in `.bench/`.
 */
export async function makeLargeMap(folder: string, megabytes: number): Promise<string> {
  const path = join(BENCH_FOLDER, `copies-${megabytes}.osm.pbf`);
  if (existsSync(path)) return path;
  mkdirSync(BENCH_FOLDER, { recursive: true });
  const names = extractsIn(folder);
  const bytes = names.reduce((sum, name) => sum + statSync(join(folder, name)).size, 0);
  const copies = Math.ceil((megabytes * 1e6 * 1.1) / bytes);
  const extracts = names.map((name) => readExtract(join(folder, name)));
  const passing = `${path}.passing.osm.pbf`;
  const osmium = spawn('osmium', ['cat', '-F', 'opl', '-', '-O', '-o', passing], {
    stdio: ['pipe', 'inherit', 'inherit'],
  });
  for (const type of ['n', 'w', 'r']) {
    let shiftId = 0;
    for (let copy = 0; copy < copies; copy++)
      for (const extract of extracts) {
        const lines = extract.lines.filter((line) => line.startsWith(type));
        const text = lines.map((line) => shiftLine(line, shiftId, copy * 0.5)).join('\n');
        if (text !== '' && !osmium.stdin.write(`${text}\n`)) await once(osmium.stdin, 'drain');
        shiftId += extract.highestId;
      }
  }
  osmium.stdin.end();
  const [code] = await once(osmium, 'close');
  if (code !== 0) throw new Error(`osmium ended with ${code}`);
  renameSync(passing, path);
  return path;
}

export function extractsIn(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.osm.pbf'))
    .sort();
}

function readExtract(path: string): Extract {
  const text = execFileSync('osmium', ['cat', path, '-f', 'opl', '-o', '-'], {
    maxBuffer: 2 ** 30,
    encoding: 'utf8',
  });
  const lines = text.split('\n').filter((line) => line !== '');
  const highestId = lines.reduce((most, line) => Math.max(most, Number(/^.(\d+)/u.exec(line)?.[1])), 0);
  return { lines, highestId };
}

function shiftLine(line: string, shiftId: number, shiftLon: number): string {
  const id = (text: string) => String(Number(text) + shiftId);
  return line
    .split(' ')
    .map((field, i) => {
      if (i === 0) return field.slice(0, 1) + id(field.slice(1));
      if (field.startsWith('x') && field.length > 1)
        return `x${(((Number(field.slice(1)) + shiftLon + 540) % 360) - 180).toFixed(7)}`;
      if (field.startsWith('N')) return field.replaceAll(/n(\d+)/gu, (_, digits: string) => `n${id(digits)}`);
      if (field.startsWith('M'))
        return field.replaceAll(
          /(^M|,)([nwr])(\d+)(?=@)/gu,
          (_, lead: string, type: string, digits: string) => `${lead}${type}${id(digits)}`,
        );
      return field;
    })
    .join(' ');
}
