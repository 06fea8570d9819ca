import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../main/contract/default-settings.ts';
import type { Description } from '../../../main/contract/description.ts';
import { readSession } from '../../../renderer/actions/session.ts';
import { wantedAtStart, wantedRecent } from '../../../renderer/actions/wanted.ts';

const FOUND: Description = {
  program: 'Lanegauge',
  settings: DEFAULT_SETTINGS,
  vehicles: [],
  loads: [],
  recents: [],
  sample: { map: 'district', drives: [], defaultDrive: 'barred', defaultVehicle: 'v', country: 'GB' },
  opened: [],
  notices: [],
  shelfMaps: 0,
};
const recent = (id: string, use: 'drive' | 'map') => ({
  id,
  use,
  name: id,
  openedAt: '2026-01-01T00:00:00Z',
});
const added = (token: string, use: 'drive' | 'map', bytes = 100) => ({
  source: { kind: 'path', token } as const,
  name: token,
  bytes,
  use,
});

describe('what is open at the start', () => {
  it('is the sample, the first time', () => {
    expect(wantedAtStart(FOUND, {})).toEqual({
      map: { source: { kind: 'sample', id: 'district' } },
      drive: { source: { kind: 'sample', id: 'barred' } },
    });
  });

  it('is the drive of the library that was open when the user left, on the shelf', () => {
    const settings = {
      ...DEFAULT_SETTINGS,
      left: { view: 'yard' as const, drive: { id: 'drive-1', track: 2 } },
    };
    const source = { kind: 'library', id: 'drive-1' };
    const left = { ...FOUND, settings, recents: [recent('olderdrive', 'drive')] };
    expect(wantedAtStart({ ...left, shelfMaps: 1 }, {})).toEqual({
      map: { source: { kind: 'shelf' }, about: source },
      drive: { source, track: 2 },
    });
    // a file given at the start comes before it
    const given = wantedAtStart({ ...left, shelfMaps: 1, opened: [added('mydrivetoken', 'drive')] }, {});
    expect(given.drive?.source).toEqual({ kind: 'path', token: 'mydrivetoken' });
  });

  it('is the drive and the map last opened, of which only what lies about the drive is read', () => {
    const recents = [
      recent('newerdrive', 'drive'),
      recent('anothermap', 'map'),
      recent('olderdrive', 'drive'),
    ];
    const drive = { kind: 'recent', id: 'newerdrive' };
    expect(wantedAtStart({ ...FOUND, recents }, {})).toEqual({
      map: { source: { kind: 'recent', id: 'anothermap' }, about: drive },
      drive: { source: drive },
    });
  });

  it('is the drive last opened on its own map, whatever map was opened since', () => {
    const own = { name: 'vale.osm.pbf', source: { kind: 'recent', id: 'valemap1' } as const };
    const recents = [recent('anothermap', 'map'), { ...recent('newerdrive', 'drive'), map: own }];
    const drive = { kind: 'recent', id: 'newerdrive' };
    expect(wantedAtStart({ ...FOUND, recents }, {})).toEqual({
      map: { source: own.source, ownOf: 'vale.osm.pbf', about: drive },
      drive: { source: drive },
    });
  });

  it('is the sample again where a drive is remembered without a map', () => {
    expect(wantedAtStart({ ...FOUND, recents: [recent('drivealone', 'drive')] }, {}).drive?.source.kind).toBe(
      'sample',
    );
  });

  it('is what a reload finds in its session', () => {
    const session = {
      map: { source: { kind: 'sample', id: 'district' } },
      drive: { source: { kind: 'upload', token: 'tokentoken' }, track: 2 },
    } as const;
    expect(wantedAtStart(FOUND, session)).toEqual(session);
  });

  it('is a drive named at the start, on the map that would have been open', () => {
    const wanted = wantedAtStart({ ...FOUND, opened: [added('mydrivetoken', 'drive')] }, {});
    expect(wanted.map?.source).toEqual({ kind: 'sample', id: 'district' });
    expect(wanted.drive?.source).toEqual({ kind: 'path', token: 'mydrivetoken' });
  });

  it('holds a large map about the drive alone, a small one whole', () => {
    const drive = added('mydrivetoken', 'drive');
    const large = wantedAtStart({ ...FOUND, opened: [added('largemaptoken', 'map', 1e9), drive] }, {});
    expect(large.map?.about).toEqual(drive.source);
    const small = wantedAtStart({ ...FOUND, opened: [added('smallmaptoken', 'map', 1e6), drive] }, {});
    expect(small.map?.about).toBeUndefined();
  });
});

describe('with maps on the shelf', () => {
  const found = { ...FOUND, shelfMaps: 1 };
  const shelf = { kind: 'shelf' };

  it('a drive named at the start is held against them, where no file was the map', () => {
    const drive = added('mydrivetoken', 'drive');
    expect(wantedAtStart({ ...found, opened: [drive] }, {})).toEqual({
      map: { source: shelf, about: drive.source },
      drive: { source: drive.source },
    });
    const session = { map: { source: { kind: 'recent', id: 'ownmapid' } } } as const;
    expect(wantedAtStart({ ...found, opened: [drive] }, session).map?.source).toEqual(session.map.source);
  });

  it('a drive opened before without a map of its own, or only on the sample, is held against them', () => {
    const source = { kind: 'recent', id: 'somedrive' };
    const wanted = { map: { source: shelf, about: source }, drive: { source } };
    const alone = recent('somedrive', 'drive');
    const own = { kind: 'sample', id: 'district' } as const;
    expect(wantedAtStart({ ...found, recents: [alone] }, {})).toEqual(wanted);
    expect(wantedRecent(alone, { open: own, shelfMaps: 1 })).toEqual(wanted);
    expect(
      wantedRecent({ ...alone, map: { name: 'district.osm.pbf', source: own } }, { open: own, shelfMaps: 1 }),
    ).toEqual(wanted);
  });

  it('a drive stays with the file it was held against', () => {
    const own = { name: 'vale.osm.pbf', source: { kind: 'recent', id: 'valemap1' } as const };
    expect(wantedRecent({ ...recent('somedrive', 'drive'), map: own }, { shelfMaps: 1 }).map?.source).toEqual(
      own.source,
    );
  });
});

describe('a session that cannot be read', () => {
  it.each([null, '', '{', 'null', '7'])('%j is none', (text) => {
    expect(readSession({ getItem: () => text, setItem: () => {} })).toEqual({});
  });
});

describe('a drive opened before', () => {
  const source = { kind: 'recent', id: 'somedrive' };
  const own = { kind: 'sample', id: 'district' } as const;
  const drive = { ...recent('somedrive', 'drive'), map: { name: 'district.osm.pbf', source: own } };

  it('is opened on its own map, and reads none where that one is open', () => {
    expect(wantedRecent(drive, { open: { kind: 'upload', token: 'another-map' }, shelfMaps: 0 })).toEqual({
      map: { source: own, ownOf: 'district.osm.pbf' },
      drive: { source },
    });
    expect(wantedRecent(drive, { open: own, shelfMaps: 0 })).toEqual({ drive: { source } });
  });

  it('is opened on the open map where its own is not known', () => {
    expect(wantedRecent(recent('somedrive', 'drive'), { open: own, shelfMaps: 0 })).toEqual({
      drive: { source },
    });
  });
});
