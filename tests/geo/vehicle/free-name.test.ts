import { describe, expect, it } from 'vitest';
import { CARD_NAME_LONGEST } from '../../../geo/vehicle/bounds.ts';
import { freeName, isSameName } from '../../../geo/vehicle/free-name.ts';

describe('a vehicle’s name in the fleet', () => {
  it('stays as it is where no other has it, and is numbered where one has', () => {
    expect(freeName('Van', ['Coach'])).toBe('Van');
    expect(freeName('Van', ['van '])).toBe('Van (2)');
    expect(freeName('Van', ['Van', 'Van (2)'])).toBe('Van (3)');
  });

  it('never grows too long for a card', () => {
    const long = 'x'.repeat(CARD_NAME_LONGEST);
    const free = freeName(long, [long]);
    expect(free.length).toBe(CARD_NAME_LONGEST);
    expect(free.endsWith(' (2)')).toBe(true);
  });

  it('is the same whatever its case and blanks', () => {
    expect(isSameName('Coach-built  7.4', ' coach-built 7.4')).toBe(true);
    expect(isSameName('Coach-built 7.4', 'Coach-built 7.0')).toBe(false);
  });
});
