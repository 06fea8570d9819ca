import { describe, expect, it } from 'vitest';
import type { Span } from '../../../../geo/drive/drive.ts';
import type { LocalNote } from '../../../../geo/notes/note.ts';
import type { MapSketch } from '../../../support/build-roads.ts';
import { at, checkNoted, millLane, note, railwayOver } from '../../../support/notes/noted-drive.ts';

// The vehicle of these tests needs 3.10 m of height, is 2.75 m over its mirrors, 2.40 m folded, plated at 3,500 kg.

const underRailway = millLane({}, railwayOver(250));

function told(sketch: MapSketch, notes: readonly LocalNote[], options = {}) {
  return checkNoted(sketch, notes, options).findings.map(({ level, subject, kind, note: by, folded }) =>
    [level, subject, kind, by, folded && 'folded'].filter((one) => one !== undefined).join(' '),
  );
}

describe('a private lane that the drive ends on', () => {
  const privateLane = millLane({ access: 'private' });
  const open = () => checkNoted(privateLane, []).findings.find(({ wants }) => wants === 'permission');
  const answers = { finding: open()?.id ?? '' };
  const said = (fields: Partial<LocalNote>) =>
    checkNoted(privateLane, [note({ say: 'Farmer agreed', ...fields })]).findings.find(
      ({ subject }) => subject === 'access',
    );

  it('is unknown, and asks for leave', () => {
    expect(open()).toMatchObject({ level: 'unknown', subject: 'access' });
  });

  it('is a care by the firm’s word that it has leave, told as its word', () => {
    const settled = said({ answers, leave: true });
    expect(settled).toMatchObject({ level: 'care', note: 'n1', id: open()?.id });
    expect(settled).not.toHaveProperty('wants');
    expect(settled?.say).toContain('The firm says that it has leave to drive here, noted on 2026-05-01 (AB)');
  });

  it('stays unknown by words alone, by leave for another place, and once the leave has ended', () => {
    expect(said({ answers })).toMatchObject({ level: 'unknown' });
    expect(said({ leave: true })).toMatchObject({ level: 'unknown' });
    expect(said({ answers, leave: true, until: '2026-01-01' })).toMatchObject({ level: 'unknown' });
  });
});

describe('a bridge without a height', () => {
  it('is unknown as long as nobody measured', () => {
    expect(told(underRailway, [])).toEqual(['unknown height bridge above']);
  });

  it.each([
    [3.4, 'clear', 'care height bridge above n1 folded'],
    [3.2, 'tight', 'tight height bridge above n1'],
    [3.0, 'barred', 'barred height bridge above n1'],
  ])('measured at %f m is %s', (heightM, verdict, finding) => {
    const report = checkNoted(underRailway, [note({ heightM })]);
    expect(report.verdict).toBe(verdict);
    expect(told(underRailway, [note({ heightM })])).toEqual([finding]);
    expect(report.findings[0]?.say).toContain('The firm measured');
    expect(report.findings[0]?.say).toContain('on 2026-05-01 (AB)');
    expect(report.findings[0]).not.toHaveProperty('wants');
  });

  it('on a stretch where the road driven is guessed says that the note counts only if it is that road', () => {
    const say = (guessed: readonly Span[]) =>
      checkNoted(underRailway, [note({ heightM: 3.4 })], { guessed }).findings.find(({ note: by }) => by)
        ?.say;
    expect(say([{ fromM: 0, toM: 500 }])).toContain('Which road is driven here is guessed');
    expect(say([{ fromM: 400, toM: 500 }])).not.toContain('guessed');
  });

  it('keeps its id when it is settled', () => {
    const [open] = checkNoted(underRailway, []).findings;
    const [settled] = checkNoted(underRailway, [note({ heightM: 3.4 })]).findings;
    expect(settled?.id).toBe(open?.id);
  });

  it('is not settled by a note 30 m along, on another road, or of another figure', () => {
    const open = 'unknown height bridge above';
    expect(told(underRailway, [note({ at: at(281, 0), heightM: 3.4 })])).toContain(open);
    const sideNote = note({ at: at(500, -30), osm: { type: 'way', id: 3 }, heightM: 3.4 });
    expect(told(underRailway, [sideNote])).toEqual([open]);
    expect(told(underRailway, [note({ widthM: 3.5 })])).toContain(open);
  });

  it('takes the lower of two figures', () => {
    const notes = [note({ heightM: 3.4 }), note({ id: 'n2', at: at(260, 0), heightM: 3.0 })];
    expect(told(underRailway, notes)).toEqual(['barred height bridge above n2']);
  });

  it('is not settled by words, which stand beside it', () => {
    const answers = { finding: checkNoted(underRailway, []).findings[0]?.id ?? '' };
    const words = note({ say: 'Ask at the mill', answers });
    const [finding] = checkNoted(underRailway, [words]).findings;
    expect(finding).toMatchObject({ level: 'unknown', note: 'n1' });
    expect(finding?.say).toContain('The firm noted on 2026-05-01 (AB): "Ask at the mill".');
  });

  it('folded away does not hide the words that answer it: they are told by themselves', () => {
    const lane = { highway: 'unclassified', bridge: 'yes', layer: '1' };
    const over = railwayOver(250);
    const main = millLane(
      { highway: 'primary' },
      { ...over, ways: (over.ways ?? []).map((way) => ({ ...way, tags: lane })) },
    );
    const [folded] = checkNoted(main, []).findings;
    expect(folded?.folded).toBe(true);
    const words = note({
      road: { name: 'Mill Lane', class: 'primary' },
      say: 'Loose netting',
      answers: { finding: folded?.id ?? '' },
    });
    expect(told(main, [words])).toContain('care note care n1');
  });
});

describe('a tunnel without a height', () => {
  const tunnel = millLane({ tunnel: 'yes' });
  const answers = { finding: checkNoted(tunnel, []).findings[0]?.id ?? '' };

  it('is settled by the figure that was measured for it, not by one measured somewhere in it', () => {
    expect(told(tunnel, [note({ heightM: 3.4 })])).toContain('unknown height roof');
    expect(told(tunnel, [note({ heightM: 3.4, answers })])).toEqual(['care height roof n1 folded']);
    const back = { steps: [-2, -1] };
    expect(told(tunnel, [note({ heightM: 3.4, answers })], back)).toContain('unknown height roof');
    const about = { ...answers, subject: 'height', kind: 'roof' } as const;
    expect(told(tunnel, [note({ heightM: 3.4, answers: about })], back)).toEqual([
      'care height roof n1 folded',
    ]);
  });
});

describe('a limit that the map lacks', () => {
  it.each([
    [{ heightM: 3.0 }, 'barred height measured n1'],
    [{ heightM: 3.2 }, 'tight height measured n1'],
    [{ heightM: 3.4 }, 'care height measured n1 folded'],
    [{ widthM: 2.3 }, 'barred width measured n1'],
    [{ widthM: 2.7 }, 'tight width measured n1'],
    [{ widthM: 3.2 }, 'care width measured n1 folded'],
    [{ massKg: 3000 }, 'barred mass measured n1'],
    [{ massKg: 3500 }, 'care mass measured n1 folded'],
  ])('%o is judged as a mapped one', (figure, finding) => {
    expect(told(millLane(), [note(figure)])).toEqual([finding]);
  });

  it('holds 25 m either way, in both directions unless it says otherwise', () => {
    const [finding] = checkNoted(millLane(), [note({ heightM: 3 })]).findings;
    expect(finding).toMatchObject({
      fromM: expect.closeTo(225, 0),
      toM: expect.closeTo(275, 0),
      at: at(250, 0),
      limit: { value: 3, unit: 'm' },
      spare: expect.closeTo(-0.1, 6),
    });
    expect(told(millLane(), [note({ heightM: 3 })], { steps: [-2, -1] })).toHaveLength(1);
    const east = note({ heightM: 3, headingDeg: 80 });
    expect(told(millLane(), [east])).toHaveLength(1);
    expect(told(millLane(), [east], { steps: [-2, -1] })).toEqual([]);
  });

  it('bears on the piece of road that is driven, not on one that is crossed or left before', () => {
    const beyond = note({ at: at(530, 0), osm: { type: 'way', id: 2 }, heightM: 3 });
    expect(told(millLane(), [beyond], { steps: [1, -3] })).toEqual([]);
    const before = note({ at: at(520, 0), osm: { type: 'way', id: 2 }, heightM: 3 });
    expect(told(millLane(), [before], { steps: [1, -3] })).toEqual(['barred height measured n1']);
    expect(
      told(millLane(), [note({ at: at(505, 0), osm: { type: 'way', id: 2 }, heightM: 3 })], { steps: [3] }),
    ).toEqual([]);
  });

  it('is told each time the drive comes there', () => {
    const both = told(millLane(), [note({ heightM: 3 })], { steps: [1, 2, -2, -1] });
    expect(both.filter((one) => one === 'barred height measured n1')).toHaveLength(2);
  });

  it('of two the lower is told', () => {
    const notes = [note({ heightM: 2.9 }), note({ id: 'n2', at: at(255, 0), heightM: 3.0 })];
    expect(told(millLane(), notes)).toEqual(['barred height measured n1']);
  });
});

describe('words without a figure', () => {
  it('are a care at their place', () => {
    const report = checkNoted(millLane(), [note({ say: 'Bent tree\non the left' })]);
    expect(report.verdict).toBe('care');
    expect(report.findings[0]).toMatchObject({
      subject: 'note',
      kind: 'care',
      note: 'n1',
      say: 'The firm noted on 2026-05-01 (AB): "Bent tree on the left".',
    });
  });
});

describe('a mapped limit', () => {
  const low = millLane({ maxheight: '3.0' });

  it('stays barred however high was measured, and says what the firm measured', () => {
    const report = checkNoted(low, [note({ heightM: 3.4 })]);
    expect(report.verdict).toBe('barred');
    expect(told(low, [note({ heightM: 3.4 })])).toEqual(['barred height limit n1']);
    expect(report.findings[0]?.say).toContain(
      `The firm measured 3.40 m (11'1") on 2026-05-01 (AB): read the sign, have the map mended.`,
    );
    expect(report.findings[0]?.limit?.value).toBe(3);
    expect(report.findings[0]?.say).toContain('Until then the lower figure holds.');
  });

  it('that leaves room is undercut by a lower figure', () => {
    expect(told(millLane({ maxheight: '3.2' }), [note({ heightM: 3.0 })])).toEqual([
      'tight height limit n1',
      'barred height measured n1',
    ]);
    expect(told(millLane({ maxheight: '4.0' }), [note({ heightM: 3.0 })])).toEqual([
      'barred height measured n1',
    ]);
  });

  it('under a condition of time is not settled by a tape', () => {
    const timed = millLane({ 'maxheight:conditional': '3.0 @ (Mo-Fr 07:00-19:00)' });
    expect(told(timed, [note({ heightM: 3.4 })])).toContain('unknown height limit');
  });
});

describe('what a note says', () => {
  const branch = note({ heightM: 3.4, say: 'Keep left, low branch' });
  const gravel = note({ id: 'n2', at: at(255, 0), heightM: 3.5, say: 'Loose gravel' });

  it.each([
    ['beside a mapped limit', millLane({ maxheight: '3.0' })],
    ['where it settles what was unknown', underRailway],
    ['where it adds a limit', millLane()],
  ])('is told with its figure, and where a lower figure holds, %s', (_, sketch) => {
    const [finding, ...more] = checkNoted(sketch, [branch, gravel]).findings;
    expect(more).toEqual([]);
    expect(finding?.note).toBe('n1');
    expect(finding?.say).toContain('The firm noted on 2026-05-01 (AB): "Keep left, low branch".');
    expect(finding?.say).toContain(`The firm measured 3.50 m (11'5") on 2026-05-01 (AB).`);
    expect(finding?.say).toContain('The firm noted on 2026-05-01 (AB): "Loose gravel".');
  });
});

describe('two limits that cannot be read, one behind the other', () => {
  const lane = { highway: 'tertiary', name: 'Mill Lane' };
  const [one, two, side] = millLane().ways;
  const sketch = {
    ...millLane(),
    ways: [
      { ...one!, tags: { ...lane, maxheight: 'low' } },
      { ...two!, tags: { ...lane, maxheight: 'ask' } },
      side!,
    ],
  };

  it('are not both settled by a figure measured for one of them', () => {
    const [first] = checkNoted(sketch, []).findings;
    const answers = { finding: first?.id ?? '', subject: 'height', kind: 'unreadable' } as const;
    expect(told(sketch, [note({ at: at(490, 0), heightM: 3.4, answers })])).toEqual([
      'care height unreadable n1 folded',
      'unknown height unreadable',
    ]);
  });
});

describe('a note that is past its last day', () => {
  it('counts on that day and no longer', () => {
    const ended = note({ heightM: 3, until: '2027-06-01' });
    expect(told(millLane(), [ended], { made: '2027-06-01T22:00:00Z' })).toHaveLength(1);
    expect(told(millLane(), [ended], { made: '2027-06-02T00:00:00Z' })).toEqual([]);
  });
});

describe('a note that cannot be placed', () => {
  it('bears on nothing and is told where the drive passes', () => {
    const moved = millLane({}, { north: 30 });
    const report = checkNoted(moved, [note({ heightM: 3 })]);
    expect(report.findings).toEqual([]);
    expect(report.cautions).toContainEqual(
      'Your note "Low arch" on 2026-05-01 (AB) is left out: its place has moved 30 m on the map, more than a note follows. Look at the place and note it anew.',
    );
    const elsewhere = note({ at: at(0, 3000), heightM: 3 });
    expect(checkNoted(moved, [elsewhere]).cautions).toHaveLength(report.cautions.length - 1);
  });
});

describe('a bar across the road whose size is not mapped', () => {
  const bar = (barrier: string, tags = {}) =>
    millLane({}, { nodeTags: { b: { barrier, ...tags } } } as Partial<MapSketch>);
  const by = (fields: Partial<LocalNote>) => note({ at: at(300, 0), ...fields });
  const levels = (sketch: MapSketch, notes: readonly LocalNote[]) =>
    checkNoted(sketch, notes)
      .findings.filter(({ subject }) => subject === 'barrier' || subject === 'height' || subject === 'width')
      .map(({ level }) => level);

  it('over it is settled by a height measured there, not by a width', () => {
    const over = bar('height_restrictor');
    expect(levels(over, [])).toEqual(['unknown']);
    expect(levels(over, [by({ heightM: 3.4 })])).toEqual(['care']);
    expect(levels(over, [by({ heightM: 3.0 })])).toEqual(['barred']);
    expect(levels(over, [by({ widthM: 3.4 })])).toContain('unknown');
  });

  it('beside it is settled by a width measured there, not by a height', () => {
    const beside = bar('width_restrictor');
    expect(levels(beside, [])).toEqual(['unknown']);
    expect(levels(beside, [by({ widthM: 3.4 })])).toEqual(['care']);
    expect(levels(beside, [by({ heightM: 3.4 })])).toContain('unknown');
  });
});
