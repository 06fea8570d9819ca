import { describe, expect, it } from 'vitest';
import { ruleFor } from '../../geo/country/table.ts';

const row = (code: string) => ruleFor(code).rule;

describe('no height sign on a public road means', () => {
  it.each([
    ['GB', 5.03, 'HSE workplace transport, height: 16 ft 6 in'],
    ['DE', 4.5, 'OpenStreetMap wiki, Key:maxheight'],
    ['FR', 4.3, 'OpenStreetMap wiki, Key:maxheight'],
  ])('in %s at least %d m (%s)', (code, metres) => {
    expect(row(code).unsignedHeight.value.leastM).toBe(metres);
  });

  it('on French motorways at least 4.75 m (OpenStreetMap wiki, Key:maxheight)', () => {
    expect(row('FR').unsignedHeight.value.motorwayLeastM).toBe(4.75);
  });

  // no published figure, or only habits from memory: nothing is promised
  it.each(['IE', 'ES', 'IT', 'NL', 'BE', 'AT', 'CH', 'US', 'CA'])(
    'in %s nothing that can be relied on',
    (code) => {
      expect(row(code).unsignedHeight.value.leastM).toBeUndefined();
    },
  );
});

describe('the legal height of a vehicle', () => {
  it.each([
    ['DE', 4.0, 'StVZO § 32, StVO § 22'],
    ['CH', 4.0, 'SVG art. 9'],
    ['BE', 4.0, 'transportbelgie.info'],
    ['IE', 4.65, 'S.I. 366 of 2008'],
    ['AT', 4.0, 'from memory'],
    ['ES', 4.0, 'from memory'],
    ['IT', 4.0, 'from memory'],
    ['NL', 4.0, 'from memory'],
  ])('in %s is %d m (%s)', (code, metres) => expect(row(code).legalHeightM.value).toBe(metres));

  it('has no national figure in Great Britain and France (from memory)', () => {
    expect(row('GB').legalHeightM.value).toBeUndefined();
    expect(row('FR').legalHeightM.value).toBeUndefined();
  });
});

// from memory; common knowledge
it('left-hand traffic is Great Britain’s and Ireland’s, right-hand the others’', () => {
  for (const code of ['GB', 'IE']) expect(row(code).driveSide.value).toBe('left');
  for (const code of ['FR', 'DE', 'ES', 'IT', 'NL', 'BE', 'AT', 'CH', 'US', 'CA'])
    expect(row(code).driveSide.value).toBe('right');
});

describe('the lorry on a sign', () => {
  it('binds a motor caravan over 3.5 t in Germany (StVO Anlage 2, Zeichen 253)', () => {
    expect(row('DE').goodsSigns.value).toBe('bind');
  });

  it.each([
    ['AT', 'ÖAMTC, 8 July 2005'],
    ['CH', 'SSV art. 19'],
    ['IT', 'Regolamento, fig. II 60/a'],
    ['GB', 'Traffic Signs Manual chapter 3, 5.15'],
    ['NL', 'RVV 1990 art. 1'],
    ['FR', 'Arrêté of 24 November 1967; for B8 from memory'],
    ['ES', 'DGT sign list, R-106'],
  ])('does not in %s (%s)', (code) => expect(row(code).goodsSigns.value).toBe('do not bind'));

  it.each(['BE', 'US', 'CA', 'PT'])('is not settled in %s', (code) => {
    expect(row(code).goodsSigns.value).toBe('not known');
  });
});

describe('signs of size and mass', () => {
  it('count the mirrors on a German width sign (StVO Anlage 2, Zeichen 264)', () => {
    expect(row('DE').widthSign.value).toBe('with mirrors');
  });

  it('leave the mirrors out in Great Britain (Construction and Use Regulations, second-hand)', () => {
    expect(row('GB').widthSign.value).toBe('body');
  });

  it.each([
    ['CH', 'actual', 'SSV art. 20'],
    ['DE', 'actual', 'StVO Anlage 2, Zeichen 262'],
    ['AT', 'actual', 'ÖAMTC, second-hand'],
    ['NL', 'actual', 'ANWB on C21'],
    ['BE', 'actual', 'Belgian driving course on C21'],
    ['US', 'actual', 'MUTCD R12'],
    ['FR', 'plated', 'FFCC on B13'],
    ['GB', 'plated', 'second-hand; the manual says maximum gross weight'],
  ])('in %s the plain mass sign is the %s mass (%s)', (code, meaning) => {
    expect(row(code).massSign.value).toBe(meaning);
  });
});
