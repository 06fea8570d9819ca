import { describe, expect, it } from 'vitest';
import { width } from '../../../../geo/rules/limits/width.ts';
import { askNode, askRoad, COACHBUILT } from '../../../support/ask.ts';

// body 2.30, mirrors 2.75, folded 2.40
function level(
  tags: Record<string, string>,
  options: Parameters<typeof askRoad>[2] = {},
): string | undefined {
  const findings = askRoad(width, tags, options);
  expect(findings.length).toBeLessThanOrEqual(1);
  return findings[0]?.level;
}

describe('a legal width limit', () => {
  it('bars a body that exceeds it', () => {
    const [finding] = askRoad(width, { maxwidth: '2.2' });
    expect(finding).toMatchObject({
      level: 'barred',
      vehicle: { value: 2.3, what: 'body width' },
      spare: -0.1,
    });
  });

  it('is tight where only the mirrors exceed it', () => {
    const [finding] = askRoad(width, { maxwidth: '2.3' });
    expect(finding).toMatchObject({
      level: 'tight',
      vehicle: { value: 2.75, what: 'width over mirrors' },
      spare: -0.45,
    });
    expect(level({ maxwidth: '2.74' })).toBe('tight');
  });

  it('asks for no margin beyond the mirrors', () => {
    expect(level({ maxwidth: '2.75' })).toBeUndefined();
  });

  it('counts the mirrors as driven where the country’s sign does', () => {
    // StVO Anlage 2, Zeichen 264
    const [german] = askRoad(width, { maxwidth: '2.5' }, { country: 'DE' });
    expect(german).toMatchObject({ level: 'barred', vehicle: { value: 2.75, what: 'width over mirrors' } });
    expect(german?.say).toContain('in Germany it counts the mirrors as driven');
    expect(level({ maxwidth: '2.5' }, { country: 'GB' })).toBe('tight');
    // where the country is not known the stricter reading bars nobody
    expect(level({ maxwidth: '2.5' })).toBe('tight');
  });

  it('counts a rack wider than the body', () => {
    const card = { ...COACHBUILT, rack: { lengthM: 0.6, widthM: 2.45, fitted: true } };
    expect(level({ maxwidth: '2.4' }, { card })).toBe('barred');
  });
});

describe('a gap', () => {
  it('bars what even folded mirrors exceed', () => {
    const [finding] = askRoad(width, { 'maxwidth:physical': '2.35' });
    expect(finding).toMatchObject({
      level: 'barred',
      vehicle: { value: 2.4, what: 'width over folded mirrors' },
      spare: -0.05,
    });
  });

  it('is tight where only unfolded mirrors exceed it, or less than 15 cm is left', () => {
    expect(level({ 'maxwidth:physical': '2.4' })).toBe('tight');
    expect(level({ 'maxwidth:physical': '2.89' })).toBe('tight');
    expect(level({ 'maxwidth:physical': '2.9' })).toBeUndefined();
  });

  it('that only the body is known to pass is tight, and the card is asked for more', () => {
    const { widthMirrorsFoldedM: _, ...card } = COACHBUILT;
    expect(level({ 'maxwidth:physical': '2.25' }, { card })).toBe('barred');
    const [finding] = askRoad(width, { 'maxwidth:physical': '2.35' }, { card });
    expect(finding?.level).toBe('tight');
    expect(finding?.say).toContain('does not give the width over folded mirrors');
  });

  it('between posts is physical even where it is mapped as maxwidth', () => {
    expect(askNode(width, { barrier: 'bollard', maxwidth: '2.35' })[0]?.level).toBe('barred');
    expect(askNode(width, { barrier: 'bollard', maxwidth: '3' })).toEqual([]);
    expect(askNode(width, { maxwidth: '2.35' })[0]?.level).toBe('tight');
  });
});

describe('width', () => {
  it('of the carriageway never bars', () => {
    expect(askRoad(width, { width: '2', est_width: '1.5', lanes: '1' })).toEqual([]);
  });

  it('limits of the other direction do not count', () => {
    expect(level({ 'maxwidth:backward': '2' })).toBeUndefined();
    expect(level({ 'maxwidth:backward': '2' }, { backward: true })).toBe('barred');
  });

  it('limits on the left lane of roadworks ask for care: keep to the right', () => {
    const [finding] = askRoad(width, { 'maxwidth:lanes': '2|none' });
    expect(finding).toMatchObject({
      level: 'care',
      kind: 'lane',
      tags: { 'maxwidth:lanes': '2|none' },
      advice: 'Do NOT take the left lane: keep to the right lane.',
    });
    expect(finding?.folded).toBeUndefined();
    expect(level({ maxwidth: '2', 'maxwidth:lanes': '2|none' })).toBe('care');
    expect(level({ maxwidth: '2', 'maxwidth:lanes': '|' })).toBe('barred');
  });

  it('limits on lanes of the other direction do not count', () => {
    expect(level({ 'maxwidth:lanes:backward': '2|2' })).toBeUndefined();
    expect(level({ 'maxwidth:lanes:backward': '2|2' }, { backward: true })).toBe('barred');
  });

  it('that cannot be read is unknown', () => {
    expect(level({ maxwidth: 'Narrow' })).toBe('unknown');
  });
});
