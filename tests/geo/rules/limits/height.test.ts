import { describe, expect, it } from 'vitest';
import { height } from '../../../../geo/rules/limits/height.ts';
import { askNode, askRoad, COACHBUILT } from '../../../support/ask.ts';

const tall = { ...COACHBUILT, heightM: 4.1 };

/** Levels of what is said, in driving order. */
function levels(tags: Record<string, string>, options: Parameters<typeof askRoad>[2] = {}): string[] {
  return askRoad(height, tags, options).map((finding) => finding.level);
}

describe('height', () => {
  it('a 3.2 m bridge bars a 3.25 m vehicle, measuring allowance counted in the spare', () => {
    const [finding, ...more] = askRoad(
      height,
      { maxheight: '3.2', name: 'Mill Lane', ref: 'B12' },
      { card: { ...COACHBUILT, heightM: 3.25 } },
    );
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      id: 'height:w1f',
      level: 'barred',
      subject: 'height',
      fromM: 0,
      road: 'Mill Lane (B12)',
      osm: [{ type: 'way', id: 1 }],
      tags: { maxheight: '3.2' },
      limit: { value: 3.2, unit: 'm', asMapped: '3.2' },
      vehicle: { value: 3.25, unit: 'm', what: 'height as measured' },
      spare: -0.1,
    });
    expect(finding?.say).toBe(
      `The limit is 3.20 m (10'5½"); the vehicle needs 3.30 m (10'10") with 0.05 m for measuring: 0.10 m too high.`,
    );
  });

  it('is barred over the limit, tight within the margin, free at the margin', () => {
    // the vehicle needs 3.10
    expect(levels({ maxheight: '3.09' })).toEqual(['barred']);
    expect(levels({ maxheight: '3.1' })).toEqual(['tight']);
    expect(levels({ maxheight: '3.24' })).toEqual(['tight']);
    expect(levels({ maxheight: '3.25' })).toEqual([]);
    expect(levels({ maxheight: '4' })).toEqual([]);
  });

  it('a limit it just keeps has the feet of the vehicle', () => {
    expect(askRoad(height, { maxheight: '3.1' })[0]?.say).toBe(
      `The limit is 3.10 m (10'3"); the vehicle needs 3.10 m (10'3") with 0.05 m for measuring: 0.00 m spare.`,
    );
  });

  it('is read from feet and inches', () => {
    expect(levels({ maxheight: `10'0"` })).toEqual(['barred']);
    expect(levels({ maxheight: `10'3"` })).toEqual(['tight']);
    expect(levels({ maxheight: `10'9"` })).toEqual([]);
  });

  it('takes the lower of the legal and the physical figure, and says it once', () => {
    const findings = askRoad(height, { maxheight: '3.2', 'maxheight:physical': '3.0' });
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ level: 'barred', tags: { 'maxheight:physical': '3.0' } });
    expect(askRoad(height, { maxheight: '3.0', 'maxheight:physical': '3.6' })[0]).toMatchObject({
      level: 'barred',
      tags: { maxheight: '3.0' },
    });
  });

  it('counts in the driven direction only', () => {
    const tags = { 'maxheight:backward': '2.5' };
    expect(levels(tags)).toEqual([]);
    expect(levels(tags, { backward: true })).toEqual(['barred']);
    expect(askRoad(height, tags, { backward: true })[0]?.id).toBe('height:w1b');
  });

  it.each(['0.4', '1.4', '10.5', '32', '380'])('of %s m is not believed', (maxheight) => {
    expect(levels({ maxheight })).toEqual(['unknown']);
  });

  it('of a road at the edge of belief is believed', () => {
    expect(levels({ maxheight: '1.5' })).toEqual(['barred']);
    expect(levels({ maxheight: '10' })).toEqual([]);
  });

  it.each(['12,000', 'low', '', '3.2-3.5', 'below_default'])('mapped as "%s" is unknown', (maxheight) => {
    const findings = askRoad(height, { maxheight });
    expect(findings.map((finding) => finding.level)).toEqual(['unknown']);
    expect(findings[0]?.say).toContain(`maxheight=${maxheight}`);
  });

  it.each(['default', 'unsigned', 'none', 'no_indications'])(
    'mapped as %s is quiet below 4 m',
    (maxheight) => {
      expect(levels({ maxheight })).toEqual([]);
    },
  );

  it('of a vehicle over 4 m is not proved by default or unsigned', () => {
    expect(levels({ maxheight: 'default' }, { card: tall })).toEqual(['unknown']);
    expect(levels({ maxheight: 'unsigned' }, { card: tall })).toEqual(['unknown']);
    expect(levels({ maxheight: 'none' }, { card: tall })).toEqual([]);
  });

  it('granted by default or without a sign is the country’s', () => {
    const quiet = (heightM: number, maxheight: string, country: string, highway = 'primary') =>
      levels({ maxheight, highway }, { card: { ...COACHBUILT, heightM }, country });
    // HSE: 5.03 m over public roads of Great Britain; no legal height
    expect(quiet(4.3, 'unsigned', 'GB')).toEqual([]);
    expect(quiet(4.3, 'default', 'GB')).toEqual([]);
    // signs only below 4.5 m (German insurers): no sign and the general rule mean one figure
    expect(quiet(4.3, 'default', 'DE')).toEqual([]);
    expect(quiet(4.3, 'unsigned', 'DE')).toEqual([]);
    expect(quiet(4.6, 'default', 'DE')).toEqual(['unknown']);
    // France, IISR art. 61: signs are compulsory below 4.30 m on any road
    expect(quiet(4.3, 'unsigned', 'FR')).toEqual(['unknown']);
    expect(quiet(4.2, 'unsigned', 'FR', 'motorway')).toEqual([]);
    // United States, MUTCD § 2C.27: 4.42 m on main roads kept to the manual; elsewhere the legal height
    expect(quiet(4.3, 'unsigned', 'US')).toEqual([]);
    expect(quiet(4.3, 'unsigned', 'US', 'unclassified')).toEqual(['unknown']);
  });

  it('unsigned proves nothing off the public road', () => {
    expect(levels({ highway: 'service', maxheight: 'unsigned' })).toEqual(['unknown']);
  });

  it('below_default with a physical figure that fits still leaves the legal one unknown', () => {
    expect(levels({ maxheight: 'below_default', 'maxheight:physical': '3.6' })).toEqual(['unknown']);
    expect(levels({ maxheight: 'below_default', 'maxheight:physical': '3.0' })).toEqual([
      'barred',
      'unknown',
    ]);
  });

  it('under the weather is unknown with its text, and nothing where no figure could matter', () => {
    const [finding] = askRoad(height, { 'maxheight:conditional': '3.0 @ (wet)' });
    expect(finding).toMatchObject({
      level: 'unknown',
      wants: 'sign',
      limit: { value: 3 },
      tags: { 'maxheight:conditional': '3.0 @ (wet)' },
    });
    expect(levels({ 'maxheight:conditional': '3.9 @ (wet)' })).toEqual([]);
  });

  it('on one lane is a care that names the lane to keep to', () => {
    const [finding] = askRoad(height, { 'maxheight:lanes': '3.9|2.5' });
    expect(finding).toMatchObject({
      level: 'care',
      kind: 'lane',
      limit: { value: 2.5, asMapped: '2.5' },
      advice: 'Do NOT take the right lane: keep to the left lane.',
    });
    expect(finding?.say).toMatch(/^On the right lane only: the limit is 2.50 m/);
    expect(levels({ 'maxheight:lanes': '3.9|4' })).toEqual([]);
    expect(levels({ 'maxheight:lanes': '2.5|2.9' })).toEqual(['barred']);
    expect(levels({ 'maxheight:lanes': 'low|2.9' })).toEqual(['unknown']);
  });

  it('in a form nobody documents is unknown, folded away where no figure could matter', () => {
    expect(askRoad(height, { 'maxheight:left': '4' })[0]).toMatchObject({ level: 'unknown', folded: true });
  });

  it('that the hour may lift is not barred but unknown, and said once', () => {
    const findings = askRoad(height, { maxheight: '3.0', 'maxheight:conditional': '3.5 @ (Su)' });
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      level: 'unknown',
      wants: 'time',
      limit: { value: 3 },
      tags: { maxheight: '3.0', 'maxheight:conditional': '3.5 @ (Su)' },
    });
  });

  it('of a wall is not lifted by a condition on the legal limit', () => {
    const tags = { 'maxheight:physical': '3.0', 'maxheight:conditional': 'none @ (Su)' };
    expect(levels(tags)).toEqual(['barred']);
    expect(levels(tags, { leaveAt: '2027-06-20T12:00' })).toEqual(['barred']);
  });

  it('of a bar on the road is judged at its node', () => {
    const [finding] = askNode(height, { barrier: 'height_restrictor', maxheight: '2.3' });
    expect(finding).toMatchObject({ id: 'height:n1002', level: 'barred', osm: [{ type: 'node', id: 1002 }] });
    expect(finding?.fromM).toBeCloseTo(200, 0);
    expect(finding?.toM).toBe(finding?.fromM);
    expect(finding?.at.lon).toBeCloseTo(7 + 200 / (111_195 * Math.cos((50 * Math.PI) / 180)), 5);
  });

  it('of a lift, a sea mark or a lock on the road is none of ours', () => {
    expect(askNode(height, { highway: 'elevator', maxheight: '2.1' })).toEqual([]);
    expect(askNode(height, { 'seamark:type': 'bridge', maxheight: '2.1' })).toEqual([]);
    expect(askNode(height, { waterway: 'lock_gate', maxheight: '2.1' })).toEqual([]);
  });

  it('of goods vehicles or buses is none of ours', () => {
    expect(levels({ 'maxheight:hgv': '2.5', 'maxheight:bus': '2.5' })).toEqual([]);
  });

  it('says which leniency was taken in reading', () => {
    expect(askRoad(height, { maxheight: '3,0m' })[0]?.say).toContain(
      '(Read from the map with care: decimal comma read as a point, unit written without a space.)',
    );
  });
});
