import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import { circlesIn } from './support/circles.ts';
import { type Edge, edgesOf, filesBelow, sourcesBelow, textOf } from './support/imports.ts';

/** Which folder may import from which; the longest matching prefix is a file's place. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  geo: ['geo'],
  'main/contract': ['main/contract', 'geo'],
  main: ['main', 'main/build', 'main/contract', 'geo'],
  'main/build': ['main/build'],
  'renderer/vite.config.ts': ['main/build'],
  renderer: ['renderer', 'main/contract', 'geo'],
  'sample-routes': ['sample-routes', 'geo'],
};
const PLACES = Object.keys(MAY_IMPORT).sort((a, b) => b.length - a.length);

/** What stands directly in geo, each line only on the lines before it. */
const ORDER_IN_GEO: readonly (readonly string[])[] = [
  ['result.ts', 'given.ts', 'lists.ts', 'remembered.ts'],
  ['earth', 'units'],
  ['document', 'clock', 'country'],
  ['vehicle', 'roads'],
  ['load'],
  ['tags'],
  ['services'],
  ['graph', 'basemap'],
  ['drive', 'report', 'shelf'],
  ['notes', 'day'],
  ['fetch', 'library'],
  ['swing'],
  ['rules', 'export'],
  ['leave'],
  ['check.ts'],
  ['wayround', 'yard'],
  ['handover'],
];

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

/** A folder of more files than this no longer says what it is for. */
const FILES_FLAT = 25;

const TOP = ['geo', 'main', 'renderer', 'sample-routes'];
const files = TOP.flatMap(sourcesBelow);
const edges = files.flatMap(edgesOf);
const ours = edges.flatMap(({ from, to }) => (to === undefined ? [] : [{ from, to }]));

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

function placeOf(path: string): string | undefined {
  return PLACES.find((place) => path === place || path.startsWith(`${place}/`));
}

/** What stands directly in geo and holds the file, itself where it stands there. */
function roomInGeo(path: string): string {
  return path.split('/')[1] ?? '';
}

function layerInGeo(path: string): number {
  return ORDER_IN_GEO.findIndex((layer) => layer.includes(roomInGeo(path)));
}

/** The two folders next to each other in one that holds both, of which the one imports the other. */
function neighbours({ from, to }: { readonly from: string; readonly to: string }): [string, string][] {
  const [a, b] = [from.split('/'), to.split('/')];
  const same = a.findIndex((part, i) => part !== b[i]);
  const bothFolders = same >= 0 && same < a.length - 1 && same < b.length - 1;
  return bothFolders ? [[a.slice(0, same + 1).join('/'), b.slice(0, same + 1).join('/')]] : [];
}

describe('imports', () => {
  it('were really read', () => {
    expect(files.length).toBeGreaterThan(600);
    expect(edges.length).toBeGreaterThan(2000);
    expect(edges.filter(({ typeOnly }) => typeOnly).length).toBeGreaterThan(500);
  });

  it('run one way: renderer to main/contract to geo, main to geo', () => {
    const wrong = ours.filter(({ from, to }) => {
      if (to.startsWith('.build/')) return false;
      const place = placeOf(from);
      const target = placeOf(to);
      return !place || !target || !MAY_IMPORT[place]?.includes(target);
    });
    expect(wrong).toEqual([]);
  });

  it('run one way inside geo too, and every folder there has its place in the order', () => {
    const inGeo = ours.filter(({ from, to }) => from.startsWith('geo/') && to.startsWith('geo/'));
    expect(inGeo.length).toBeGreaterThan(1000);
    expect(files.filter((file) => file.startsWith('geo/') && layerInGeo(file) < 0)).toEqual([]);
    const wrong = inGeo.filter(
      ({ from, to }) => roomInGeo(from) !== roomInGeo(to) && layerInGeo(to) >= layerInGeo(from),
    );
    expect(wrong).toEqual([]);
  });

  it('run one way between neighbouring folders everywhere', () => {
    const between = ours.flatMap(neighbours);
    expect(between.length).toBeGreaterThan(1000);
    expect(circlesIn(between)).toEqual([]);
  });

  it('make no circle of files, not even of types', () => {
    expect(circlesIn(ours.map(({ from, to }) => [from, to] as const))).toEqual([]);
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
    expect(layerInGeo('geo/rules/rule.ts')).toBeGreaterThan(layerInGeo('geo/drive/drive.ts'));
    expect(neighbours({ from: 'geo/a/x/1.ts', to: 'geo/a/y/2.ts' })).toEqual([['geo/a/x', 'geo/a/y']]);
    expect(neighbours({ from: 'geo/a/1.ts', to: 'geo/a/y/2.ts' })).toEqual([]);
    expect(
      circlesIn([
        ['a', 'b'],
        ['b', 'c'],
        ['c', 'a'],
        ['c', 'd'],
      ]),
    ).toEqual([['a', 'b', 'c']]);
  });
});

describe('source files', () => {
  it('of geo name no clock, chance or system zone', () => {
    const clock =
      /\bDate\.now\b|\bnew Date\(\s*\)|\bMath\.random\b|\bprocess\.|resolvedOptions\(\)\.timeZone/;
    const inGeo = files.filter((file) => file.startsWith('geo/'));
    expect(inGeo.filter((file) => clock.test(textOf(file)))).toEqual([]);
  });

  it('stay short enough to read: no more than 350 lines', () => {
    const long = files
      .map((file) => ({ file, lines: textOf(file).split('\n').length }))
      .filter(({ lines }) => lines > 351);
    expect(long).toEqual([]);
  });

  it(`stand no more than ${FILES_FLAT} in one folder`, () => {
    const counts = new Map<string, number>();
    for (const file of [...TOP, 'tests'].flatMap(filesBelow))
      counts.set(dirname(file), (counts.get(dirname(file)) ?? 0) + 1);
    expect([...counts].filter(([, count]) => count > FILES_FLAT)).toEqual([]);
  });
});
