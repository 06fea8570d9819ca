import { describe, expect, it } from 'vitest';
import { sayGuessedShare, sayGuessedToDriver, sayKeepsPoints } from '../../../geo/report/say-guessed.ts';

const drive = (guessedM: number, lengthM: number) => ({
  match: { drivenM: lengthM, offMapM: 0, guessedM },
  route: { name: '', file: 'x.gpx', lengthM, segments: 1, positions: 9 },
});

describe('a route whose points lie far apart', () => {
  it('is told first how much of it is guessed, in kilometres and as a share, and what to do', () => {
    expect(sayGuessedShare(drive(6200, 17_200), 'metric')).toBe(
      '6.2 km of 17.2 km (36 %) is guessed: the route’s points lie far apart there, and another road may be meant. Record the drive, or plan it with the points closer together.',
    );
    expect(sayGuessedShare(drive(6200, 17_200), 'imperial')).toMatch(/^3\.9 mi of 10\.7 mi \(36 %\)/);
  });

  it('never has a guess rounded away, or made more than the drive', () => {
    expect(sayGuessedShare(drive(20, 100_000), 'metric')).toMatch(/\(1 %\)/);
    expect(sayGuessedShare(drive(1001, 1000), 'metric')).toMatch(/\(100 %\)/);
  });

  it('is told to who drives with what he can do, and to who hands it over with what the GPX lacks', () => {
    expect(sayGuessedToDriver(drive(6200, 17_200), 'metric')).toMatch(/^6\.2 km of .* ask the firm\.$/);
    expect(sayGuessedToDriver(drive(6200, 17_200), 'metric')).not.toContain('plan it');
    expect(sayKeepsPoints(drive(6200, 17_200))).toContain('the GPX keeps them');
    expect(sayKeepsPoints(drive(0, 17_200))).toBeUndefined();
  });

  it('with every point on its road has nothing to say', () => {
    expect(sayGuessedShare(drive(0, 17_200), 'metric')).toBeUndefined();
    expect(sayGuessedShare(drive(0, 0), 'metric')).toBeUndefined();
  });
});
