import { describe, expect, it } from 'vitest';
import { readGpx } from '../../../geo/drive/gpx/read-gpx.ts';
import { trackGpx } from '../../../geo/export/track-gpx.ts';

const stretch = (...line: number[]) => ({ kind: 'stretch' as const, line });

describe('a followed drive as a GPX track', () => {
  it('holds every position once, where legs meet too, and parts at gaps', () => {
    const text = trackGpx(
      {
        name: 'Past <the> bridge',
        legs: [
          stretch(54, 9, 54.001, 9, 54.002, 9),
          { kind: 'offMap', line: [54.002, 9, 54.003, 9.001] },
          { kind: 'gap', line: [54.003, 9.001, 55, 10] },
          stretch(55, 10, 55.001, 10),
        ],
      },
      'Lanegauge',
    );
    const read = readGpx(text ?? '');
    if (!read.ok) throw new Error(read.error.message);
    const [route] = read.value.routes;
    expect(read.value.notes.filter((note) => !/segment|gap/i.test(note))).toEqual([]);
    expect(route?.name).toBe('Past <the> bridge');
    expect(route?.segments.map(({ lat }) => [...lat])).toEqual([
      [54, 54.001, 54.002, 54.003],
      [55, 55.001],
    ]);
    expect([...(route?.segments[0]?.lon ?? [])]).toEqual([9, 9, 9, 9.001]);
  });

  it('is nothing where nothing is driven', () => {
    expect(trackGpx({ name: '', legs: [{ kind: 'gap', line: [1, 1, 2, 2] }] }, 'Lanegauge')).toBeUndefined();
  });
});
