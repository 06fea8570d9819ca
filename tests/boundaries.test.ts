import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');

/** Which folder may import from which; the longest matching prefix is a file's place. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  geo: ['geo'],
  'main/contract': ['main/contract', 'geo'],
  main: ['main', 'main/contract', 'geo'],
  renderer: ['renderer', 'main/contract', 'geo'],
  'sample-routes': ['sample-routes', 'geo'],
};
const PLACES = Object.keys(MAY_IMPORT).sort((a, b) => b.length - a.length);

/** Packages that geo may use: pure ones. */
const PURE_PACKAGES = [
  '@photostructure/tz-lookup',
  '@rapideditor/country-coder',
  '@turf/turf',
  'flatbush',
  'geojson',
  'opening_hours',
  'saxes',
  'zod',
];

interface Edge {
  readonly from: string;
  readonly specifier: string;
  /** a file of ours, from the root, when the import is relative */
  readonly to?: string;
  /** gone once compiled: `import type`; an import of inline types alone stays and loads its file */
  readonly typeOnly: boolean;
}

const files = ['geo', 'main', 'renderer', 'sample-routes'].flatMap((folder) =>
  sourcesBelow(join(ROOT, folder)),
);
const edges = files.flatMap(edgesOf);

function sourcesBelow(folder: string): string[] {
  let entries: ReturnType<typeof list>;
  try {
    entries = list(folder);
  } catch {
    return [];
  }
  return entries.flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sourcesBelow(path);
    return /\.tsx?$/.test(entry.name) && !entry.name.endsWith('.d.ts') ? [path] : [];
  });
}

function list(folder: string) {
  return readdirSync(folder, { withFileTypes: true });
}

function edgesOf(file: string): Edge[] {
  const text = readFileSync(file, 'utf8');
  // a worker is started by the address of its file, so that is an import too; folders named that way are not
  const found = text.matchAll(
    /(?:\bfrom\s+|\bimport\s*\(\s*|\bimport\s+|new URL\(\s*(?=['"][^'"\n]+\.[jt]s['"]))['"]([^'"\n]+)['"]/g,
  );
  return [...found].map(({ index, 1: specifier = '' }) => ({
    from: unix(relative(ROOT, file)),
    specifier,
    typeOnly: /\b(?:import|export)\s+type\s[^;]*$/.test(text.slice(0, index)),
    ...(specifier.startsWith('.') ? { to: unix(relative(ROOT, resolve(dirname(file), specifier))) } : {}),
  }));
}

/** What a file loads when it runs, itself, ours and packages, each with the file that asked for it. */
function loadedBy(starts: readonly string[]): ReadonlyMap<string, string> {
  const loaded = new Map(starts.map((start) => [start, start]));
  for (const from of loaded.keys())
    for (const { to, specifier, typeOnly } of edges.filter((edge) => edge.from === from)) {
      const target = to ?? specifier;
      if (!typeOnly && !loaded.has(target)) loaded.set(target, from);
    }
  return loaded;
}

function unix(path: string): string {
  return path.split(sep).join('/');
}

function placeOf(path: string): string | undefined {
  return PLACES.find((place) => path.startsWith(`${place}/`));
}

describe('imports', () => {
  it('were really read', () => {
    expect(files.length).toBeGreaterThan(60);
    expect(edges.length).toBeGreaterThan(150);
    expect(edges.filter(({ typeOnly }) => typeOnly).length).toBeGreaterThan(100);
  });

  it('and sources were read in every folder of geo', () => {
    const unread = list(join(ROOT, 'geo'))
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => `geo/${name}/`)
      .filter((folder) => !files.some((file) => unix(relative(ROOT, file)).startsWith(folder)));
    expect(unread).toEqual([]);
  });

  it('run one way: renderer to main/contract to geo, main to geo', () => {
    const wrong = edges.filter(({ from, to }) => {
      if (to === undefined || to.startsWith('.build/')) return false;
      const place = placeOf(from);
      const target = placeOf(to);
      return !place || !target || !MAY_IMPORT[place]?.includes(target);
    });
    expect(wrong).toEqual([]);
  });

  it('bring into geo only pure packages', () => {
    const wrong = edges.filter(
      ({ from, to, specifier }) =>
        from.startsWith('geo/') && to === undefined && !PURE_PACKAGES.some((name) => specifier === name),
    );
    expect(wrong).toEqual([]);
  });

  it('reach electron from main/electron alone', () => {
    const wrong = edges.filter(
      ({ from, specifier }) => /^electron(\/|$)/.test(specifier) && !from.startsWith('main/electron/'),
    );
    expect(wrong).toEqual([]);
  });

  it('bring no zod into the window: what comes to it is parsed on the other side', () => {
    const loaded = loadedBy(['renderer/main.tsx']);
    expect(loaded.size).toBeGreaterThan(100);
    expect(loaded.get('zod')).toBeUndefined();
    expect(loadedBy(['geo/vehicle/card.ts']).get('zod')).toBe('geo/vehicle/card.ts');
  });

  it('find a breach where one is made', () => {
    const breach: Edge = {
      from: 'geo/check.ts',
      specifier: '../main/version.ts',
      to: 'main/version.ts',
      typeOnly: false,
    };
    expect(MAY_IMPORT[placeOf(breach.from) ?? '']).not.toContain(placeOf(breach.to ?? ''));
  });
});

describe('source files', () => {
  it('of geo name no clock, chance or system zone', () => {
    const clock =
      /\bDate\.now\b|\bnew Date\(\s*\)|\bMath\.random\b|\bprocess\.|resolvedOptions\(\)\.timeZone/;
    const wrong = files
      .filter((file) => unix(relative(ROOT, file)).startsWith('geo/'))
      .filter((file) => clock.test(readFileSync(file, 'utf8')))
      .map((file) => unix(relative(ROOT, file)));
    expect(wrong).toEqual([]);
  });

  it('stay short enough to read: no more than 350 lines', () => {
    const long = files
      .map((file) => ({
        file: unix(relative(ROOT, file)),
        lines: readFileSync(file, 'utf8').split('\n').length,
      }))
      .filter(({ lines }) => lines > 351);
    expect(long).toEqual([]);
  });
});
