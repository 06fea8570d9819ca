import { describe, expect, it, vi } from 'vitest';
import { handedFiles, namedFiles } from '../../../main/electron/named-files.ts';

vi.mock('electron', () => import('./fake-electron.ts'));

describe('a command line', () => {
  it.each([
    ['a packed program', ['lanegauge', '/d/a.gpx'], true, ['/d/a.gpx']],
    ['a program run from its folder', ['electron', '.', '/d/a.gpx'], false, ['/d/a.gpx']],
    ['its folder alone', ['electron', '/program.gpx'], false, []],
    ['a relative name', ['lanegauge', 'a.gpx'], true, ['/here/a.gpx']],
    ['a name with spaces and marks', ['lanegauge', '/d/Ann & Bob ☂.GPX'], true, ['/d/Ann & Bob ☂.GPX']],
    ['an address, as Linux desktops write it', ['lanegauge', 'file:///d/a%20b.gpx'], true, ['/d/a b.gpx']],
    ['an address of another computer', ['lanegauge', 'file://server/d/a.gpx'], true, []],
    ['switches', ['lanegauge', '--inspect=a.gpx', '-x.gpx', '--', '/d/a.gpx'], true, ['/d/a.gpx']],
    ['what is no drive and no map', ['lanegauge', '/etc/passwd', 'https://evil.test/a.html'], true, []],
    [
      'maps',
      ['lanegauge', '/d/a.osm.pbf', '/d/a.osm.gz', '/d/a.osm'],
      true,
      ['/d/a.osm.pbf', '/d/a.osm.gz', '/d/a.osm'],
    ],
    ['an endless name', ['lanegauge', `/${'x'.repeat(5000)}.gpx`], true, []],
    ['a name cut by a zero', ['lanegauge', '/d/a\0.gpx'], true, []],
  ])('of %s', (_, argv, packed, files) => {
    expect(namedFiles(argv, { isPackaged: packed, folder: '/here' })).toEqual(files);
  });

  it('of a hundred files opens the first few', () => {
    expect(namedFiles(['x', ...Array(100).fill('/a.gpx')], { isPackaged: true, folder: '/' })).toHaveLength(
      8,
    );
  });
});

describe('another start', () => {
  it('hands over whole paths only: where it stood is not known', () => {
    expect(handedFiles({ files: ['a.gpx', '/d/a.gpx'] })).toEqual(['/d/a.gpx']);
  });
});
