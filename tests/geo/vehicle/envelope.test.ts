import { describe, expect, it } from 'vitest';
import { envelopeOf } from '../../../geo/vehicle/envelope.ts';
import { COACHBUILT } from '../../support/ask.ts';

describe('the envelope of a vehicle', () => {
  it('adds 5 cm of measuring allowance to the height', () => {
    expect(envelopeOf(COACHBUILT).heightM).toBeCloseTo(3.1, 9);
  });

  it('adds a fitted rack to the length, and not an unfitted one', () => {
    const rack = { lengthM: 0.6, widthM: 1.8, fitted: true };
    expect(envelopeOf({ ...COACHBUILT, rack }).lengthM).toBeCloseTo(7.6, 9);
    expect(envelopeOf({ ...COACHBUILT, rack: { ...rack, fitted: false } }).lengthM).toBe(7);
  });

  it('counts a rack wider than the body as body', () => {
    const rack = { lengthM: 0.6, widthM: 2.45, fitted: true };
    const envelope = envelopeOf({ ...COACHBUILT, rack });
    expect(envelope.bodyWidthM).toBe(2.45);
    expect(envelope.leastWidthM).toBe(2.45);
    expect(envelope.mirrorsWidthM).toBe(2.75);
  });

  it('makes its least width with folded mirrors, or the body where those are not known', () => {
    const { widthMirrorsFoldedM: _, ...unknown } = COACHBUILT;
    expect(envelopeOf(COACHBUILT)).toMatchObject({ leastWidthM: 2.4, foldedKnown: true });
    expect(envelopeOf(unknown)).toMatchObject({ leastWidthM: 2.3, foldedKnown: false });
  });
});
