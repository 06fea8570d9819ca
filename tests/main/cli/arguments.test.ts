import { describe, expect, it } from 'vitest';
import { readCheckArguments, standsIn } from '../../../main/cli/arguments.ts';

const GOOD = ['--route', 'a.gpx', '--map', 'm.osm.pbf', '--vehicle', 'v.json'];

function refusal(words: readonly string[]): string {
  const read = readCheckArguments(words, '/home/host');
  return read.ok ? 'accepted' : read.error.message;
}

describe('the words after lanegauge check', () => {
  it('take relative paths from where the user stands', () => {
    const read = readCheckArguments([...GOOD, '--map', '/maps/b.osm'], '/home/host');
    expect(read.ok && read.value.routePath).toBe('/home/host/a.gpx');
    expect(read.ok && read.value.mapPaths).toEqual(['/home/host/m.osm.pbf', '/maps/b.osm']);
  });

  it('name the library whose notes count, or leave notes out', () => {
    const read = readCheckArguments([...GOOD, '--yard', 'firm'], '/home/host');
    expect(read.ok && read.value).toMatchObject({ yardFolder: '/home/host/firm', noNotes: false });
    expect(refusal([...GOOD, '--no-notes'])).toBe('accepted');
    expect(refusal([...GOOD, '--no-notes', '--yard', 'firm'])).toContain('take one of them');
  });

  it('name what is missing', () => {
    expect(refusal([])).toContain('--route FILE.gpx, --vehicle FILE.json');
    expect(refusal(['--route', 'a.gpx'])).not.toContain('--route FILE.gpx');
  });

  it('refuse an unknown option by name', () => {
    expect(refusal([...GOOD, '--hight', '3'])).toContain('--hight');
  });

  it('name the option that was likely meant', () => {
    expect(refusal([...GOOD, '--contry', 'GB'])).toContain(
      'There is no option --contry (did you mean --country?).',
    );
    expect(refusal([...GOOD, '--lave=2027-06-12T09:30'])).toContain('(did you mean --leave?)');
    expect(refusal([...GOOD, '--frobnicate'])).toContain('There is no option --frobnicate. ');
  });

  it('refuse a stray word', () => {
    expect(refusal([...GOOD, 'b.gpx'])).toContain("'b.gpx' has no option before it, such as --route.");
  });

  it('refuse an option given twice where one is wanted', () => {
    expect(refusal([...GOOD, '--vehicle', 'w.json'])).toContain('--vehicle is given 2 times');
  });

  it('refuse a day that does not exist', () => {
    expect(refusal([...GOOD, '--leave', '2027-02-30T09:30'])).toContain('2027-02-30T09:30');
    expect(refusal([...GOOD, '--leave', 'tomorrow'])).toContain('tomorrow');
    expect(refusal([...GOOD, '--leave', '2027-06-12T09:30'])).toBe('accepted');
  });

  it('take a country code in either case and refuse anything else', () => {
    const read = readCheckArguments([...GOOD, '--country', 'gb'], '/');
    expect(read.ok && read.value.country).toBe('GB');
    expect(refusal([...GOOD, '--country', 'Britain'])).toContain('BRITAIN');
  });
});

describe('the folder the user stands in', () => {
  it('is where npm was called, when npm runs the program', () => {
    const environment = { npm_lifecycle_event: 'lanegauge', INIT_CWD: '/home/host/drives' };
    expect(standsIn(environment, '/opt/lanegauge')).toBe('/home/host/drives');
  });

  it('is the working folder otherwise, whatever an outer npm left behind', () => {
    expect(standsIn({ npm_lifecycle_event: 'other', INIT_CWD: '/elsewhere' }, '/here')).toBe('/here');
    expect(standsIn({}, '/here')).toBe('/here');
  });
});

describe('a country', () => {
  it('that is none is refused, and the United Kingdom told by its code', () => {
    expect(refusal([...GOOD, '--country', 'UK'])).toContain('write GB');
    for (const code of ['ZZ', 'EU', 'QQ']) expect(refusal([...GOOD, '--country', code])).toContain(code);
    for (const code of ['GB', 'IE', 'FR', 'DE', 'LI', 'US'])
      expect(refusal([...GOOD, '--country', code])).toBe('accepted');
  });
});
