import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPath } from '../../../../geo/swing/motion/read-path.ts';

function refusal(text: string): string {
  const read = readPath(text, 'p.json');
  return read.ok ? 'taken' : read.error.message;
}
const withSegments = (...segments: unknown[]): string => JSON.stringify({ segments });

describe('a path file', () => {
  it('holds lines and arcs, metres and degrees to the left', () => {
    const read = readPath(withSegments({ line: 30 }, { arc: 8, turnDeg: -90 }), 'p.json');
    expect(read).toEqual({
      ok: true,
      value: {
        pieces: [
          { kind: 'line', lengthM: 30 },
          { kind: 'arc', radiusM: 8, turnRad: -Math.PI / 2 },
        ],
      },
    });
  });

  it.each([
    ['no JSON', 'line 30', 'not JSON'],
    ['an empty file', '', 'not JSON'],
    ['a list', '[]', 'not a list'],
    ['no segments', '{}', 'segments is missing'],
    ['an empty list', withSegments(), 'it has no segments'],
    ['an unknown field', '{"segments":[{"line":1}],"unit":"ft"}', '"unit" is no field'],
    ['a field given twice', '{"segments":[{"line":1,"line":2}]}', '"line" stands there twice'],
    [
      'a line of no length',
      withSegments({ line: 5 }, { line: 0 }),
      'segment 2: line: the length must be more than 0 m',
    ],
    ['a line going back', withSegments({ line: -3 }), 'segment 1: line'],
    ['a line beyond measure', '{"segments":[{"line":1e999}]}', 'not Infinity'],
    ['a line without end', withSegments({ line: 10_001 }), 'more than 10000 m'],
    ['a length in quotes', withSegments({ line: '5' }), 'write 5 without quotes'],
    [
      'a line and an arc at once',
      withSegments({ line: 5, arc: 8, turnDeg: 90 }),
      'a line and an arc at once',
    ],
    ['an arc without its turn', withSegments({ arc: 8 }), 'no "turnDeg"'],
    ['a turn without its arc', withSegments({ turnDeg: 90 }), 'neither "line" nor "arc"'],
    ['an arc that does not turn', withSegments({ arc: 8, turnDeg: 0 }), 'must not be 0'],
    ['an arc of no radius', withSegments({ arc: 0, turnDeg: 90 }), 'the radius must be more than 0 m'],
    ['an arc round and round', withSegments({ arc: 8, turnDeg: 3601 }), 'more than 3600 degrees'],
    ['a misspelt turn', withSegments({ arc: 8, turn: 90 }), '"turn" is no field of a path segment'],
    ['null', withSegments(null), 'segment 1: it must be an object'],
    ['a path as long as a drive', withSegments({ line: 6000 }, { line: 6000 }), '12000 m long'],
  ])('with %s is refused in a sentence', (_, text, says) => {
    expect(refusal(text)).toContain(says);
  });

  it('with more than 10,000 segments is refused', () => {
    expect(refusal(withSegments(...Array.from({ length: 10_001 }, () => ({ line: 0.5 }))))).toContain(
      'more than 10000',
    );
  });

  it('never throws, whatever it holds', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.json()),
        (text) => typeof readPath(text, 'p.json').ok === 'boolean',
      ),
    );
    const number = fc.oneof(fc.double(), fc.integer(), fc.constant(null), fc.string());
    const segment = fc.record({ line: number, arc: number, turnDeg: number }, { requiredKeys: [] });
    fc.assert(
      fc.property(fc.array(segment), (segments) => {
        const read = readPath(JSON.stringify({ segments }), 'p.json');
        if (!read.ok) expect(read.error.message).toMatch(/^p\.json is not .*\.$/s);
        else
          for (const piece of read.value.pieces)
            expect(piece.kind === 'line' ? piece.lengthM : piece.radiusM).toBeGreaterThan(0);
      }),
    );
  });
});
