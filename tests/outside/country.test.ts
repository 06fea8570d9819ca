import { describe, expect, it } from 'vitest';
import { ruleFor } from '../../geo/country/table.ts';

const row = (code: string) => ruleFor(code).rule;

describe('no height sign on a public road means', () => {
  it.each([
    ['GB', 5.03, 'HSE workplace transport, height: 16 ft 6 in'],
    ['DE', 4.5, 'insurers and the map’s handbook: signs only below 4.5 m'],
    ['FR', 4.3, 'IISR art. 61: compulsory below 4.30 m on any road'],
    ['ES', 4.0, 'Norma 8.1-IC, 9.6: R-205 wherever less than 4.0 m is free'],
    ['IT', 4.0, 'DPR 495/92 art. 118(1)b'],
    ['CH', 4.0, 'SSV art. 21(2)'],
    ['US', 4.42, 'MUTCD 2009 § 2C.27: 13 ft 6 in and 12 in, on roads kept to the manual'],
  ])('in %s at least %d m (%s)', (code, metres) => {
    expect(row(code).unsignedHeight.value.leastM).toBe(metres);
  });

  it('in the United States only on main roads: parkways and old local bridges promise nothing', () => {
    expect(row('US').unsignedHeight.value.mainRoadsOnly).toBe(true);
  });

  // no published figure, or only habits from memory: nothing is promised
  it.each(['IE', 'NL', 'BE', 'AT', 'CA', 'PT', 'LU', 'DK', 'NO'])(
    'in %s nothing that can be relied on',
    (code) => {
      expect(row(code).unsignedHeight.value.leastM).toBeUndefined();
    },
  );
});

describe('the legal height of a vehicle', () => {
  it.each([
    ['DE', 4.0, 'StVO § 18(1), StVZO § 32'],
    ['CH', 4.0, 'VTS art. 94'],
    ['AT', 4.0, 'an Austrian authority’s page'],
    ['IE', 4.65, 'S.I. 366 of 2008'],
    ['BE', 4.0, 'Directive 96/53/EC annex I'],
    ['ES', 4.0, 'Directive 96/53/EC annex I'],
    ['IT', 4.0, 'Directive 96/53/EC annex I'],
    ['NL', 4.0, 'Directive 96/53/EC annex I'],
    ['CA', 4.15, 'Ontario: motor home; British Columbia'],
    ['NZ', 4.3, 'NZTA'],
  ])('in %s is %d m (%s)', (code, metres) => expect(row(code).legalHeightM.value).toBe(metres));

  it('has no national figure in Great Britain and France (from memory)', () => {
    expect(row('GB').legalHeightM.value).toBeUndefined();
    expect(row('FR').legalHeightM.value).toBeUndefined();
  });
});

// border data of country-coder 5.6.1
it('left-hand traffic is Great Britain’s, Ireland’s, Malta’s, Australia’s and New Zealand’s', () => {
  for (const code of ['GB', 'IE', 'MT', 'AU', 'NZ']) expect(row(code).driveSide.value).toBe('left');
  for (const code of ['FR', 'DE', 'ES', 'IT', 'NL', 'BE', 'AT', 'CH', 'US', 'CA'])
    expect(row(code).driveSide.value).toBe('right');
});

describe('the lorry on a sign', () => {
  it.each([
    ['DE', 'StVO Anlage 2, Zeichen 253'],
    ['AU', 'Australian Road Rules, r. 104'],
  ])('binds a motor caravan over 3.5 t in %s (%s)', (code) => {
    expect(row(code).goodsSigns.value).toBe('bind');
  });

  it.each([
    ['AT', 'StVO § 52 Z 7a'],
    ['BE', 'royal decree of 30 July 2022, C23'],
    ['CH', 'SSV art. 19'],
    ['IT', 'Regolamento, fig. II 60/a'],
    ['GB', 'Traffic Signs Manual chapter 3, 5.15'],
    ['NL', 'RVV 1990 art. 1'],
    ['FR', 'Arrêté of 24 November 1967; for B8 from memory'],
    ['ES', 'DGT sign list, R-106'],
  ])('does not in %s (%s)', (code) => expect(row(code).goodsSigns.value).toBe('do not bind'));

  it.each(['US', 'CA', 'PT', 'XK'])('is not settled in %s', (code) => {
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
