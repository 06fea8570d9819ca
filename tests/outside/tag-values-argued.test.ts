/*
 * Real tag values whose meaning a table of judged values gives otherwise than we read them, each with the reason for
 * ours. The judgements are for 3.5 t, 3.2 m high, 2.35 m wide, 7.5 m long; time and errand not known. Values seen in
 * OpenStreetMap data (© OpenStreetMap contributors, ODbL).
 */
import { describe, expect, it } from 'vitest';
import type { ConditionContext } from '../../geo/tags/conditional/context.ts';
import { evaluateConditional } from '../../geo/tags/conditional/evaluate.ts';
import { parseConditional } from '../../geo/tags/conditional/parse.ts';
import { readLength } from '../../geo/units/read-length.ts';

const REFERENCE: ConditionContext = {
  vehicle: { weight: 3500, weightrating: 3500, height: 3.2, width: 2.35, length: 7.5, axles: 2 },
};

/** `no`, `-` for the unconditional tag, `a or b?` where it stays open. */
function ours(text: string): string {
  const parsed = parseConditional(text);
  if (!parsed.ok) return 'unreadable';
  const judged = evaluateConditional(parsed.value, REFERENCE);
  if (judged.settled) return judged.value ?? '-';
  return `${judged.possible.map((value) => value ?? '-').join(' or ')}?`;
}

describe('a value without a condition is not ignored', () => {
  // "yes at these hours; no" most likely means no at all others: ignoring the "no" would hide a restriction, while
  // reading it as the last clause that always holds would bar everybody. It stays open, with its text.
  it.each([
    ['yes @ (Mo-Su sunset-21:00); no', 'no or yes or -?'],
    ['yes @ bus:psv; no', 'no or yes or -?'],
    ['delivery @ (Mo-Sa 06:00-10:00); destination', 'destination or delivery or -?'],
    ['destination @ (weight>7.5);agricultural', 'agricultural or -?'],
    ['no @ (vehicle AND (PH ; PH+1 00:00 - 05:00)); delivery @ hgv; yes', 'yes or no or -?'],
  ])('%s is %s (table: the last word ignored)', (text, expected) => {
    expect(ours(text)).toBe(expected);
  });
});

describe('OR has one meaning even though the scheme does not have it', () => {
  it.each([
    ['none @ (agricultural OR forestry)', 'none or -?'],
    ['none @ (delivery OR psv)', 'none or -?'],
    ['none @ (destination OR psv)', 'none or -?'],
    // 3.5 t is below 7.5 t whatever the errand
    ['yes @ (maxweight<7.5 OR destination)', 'yes'],
  ])('%s is %s (table: unknown)', (text, expected) => {
    expect(ours(text)).toBe(expected);
  });
});

describe('what depends on being an emergency vehicle does not depend on the errand', () => {
  it.each(['none @ emergency', 'none @ (emergency)'])(
    '%s never exempts a hired motorhome (table: purpose)',
    (text) => {
      expect(ours(text)).toBe('-');
    },
  );
});

describe('in a tag for lanes the whole a|b is one value', () => {
  // OSM wiki, Key:*:lanes: the conditional suffix is outermost. The table keeps them all for "unknown".
  it.each([
    ['none|no @ (weight>15)', '-'],
    ['no|yes|yes @ (weight>7.5)', '-'],
    ['no|yes|yes@(weight>7.5)', '-'],
    ['no|yes|yes|yes @ (weight>7.5)', '-'],
    ['no|yes|yes|yes|yes @ (weight>7.5)', '-'],
    ['yes|no|yes|yes @ (weight>7.5)', '-'],
    ['yes|yes @ (Mo-Fr 09:00-15:00, 18:00-07:00; Sa-Su 24 h)', 'yes|yes or -?'],
    ['||yes @ (Mo-Fr 09:00-15:00, 18:00-07:00;Sa-Su 24h)', '||yes or -?'],
    ['|yes @ Mo-Fr 09:00-15:00;18:00-07:00;Sa-Su 24h', '|yes or -?'],
  ])('%s is %s', (text, expected) => {
    expect(ours(text)).toBe(expected);
  });

  it('a condition on one lane only is outside the scheme and unreadable, as in the table', () => {
    expect(ours('no @ (weight>15)|none')).toBe('unreadable');
  });
});

describe('an abbreviation nobody has documented', () => {
  it('CAM may be a lorry or a camper: not ruled out (table: not this vehicle)', () => {
    expect(ours('no @ CAM')).toBe('no or -?');
  });
});

describe('words in place of a figure are told apart', () => {
  // the table calls all four "unknown"; two of them say something a driver can use
  it.each([
    ['below_default', 'below_default'],
    ['unsigned', 'unsigned'],
    ['Narrow', 'unreadable'],
    ['<', 'unreadable'],
  ])('%s is %s', (text, kind) => {
    expect(readLength(text).kind).toBe(kind);
  });
});
