import { z } from 'zod';
import { type DocumentWords, readDocument } from '../../document/read-document.ts';
import { sayFault } from '../../document/say-fault.ts';
import { toRad } from '../../earth/angles.ts';
import { ok, type Result } from '../../result.ts';
import { type GuidePath, type PathPiece, shapeOf } from './guide-path.ts';

const SEGMENTS_MAX = 10_000;
/** Longer is a drive, not a manoeuvre. */
const PATH_MAX_M = 10_000;
const TURN_MAX_DEG = 3600;

const lengthM = (what: string) =>
  z
    .number()
    .refine((value) => value > 0, { error: `${what} must be more than 0 m` })
    .refine((value) => value <= PATH_MAX_M, { error: `${what} is more than ${PATH_MAX_M} m` })
    .optional();

/** `{ "line": 30 }`, or `{ "arc": 8, "turnDeg": 90 }`: metres, and degrees to the left. */
const segmentSchema = z
  .strictObject({
    line: lengthM('the length'),
    arc: lengthM('the radius'),
    turnDeg: z
      .number()
      .refine((value) => value !== 0, { error: 'the turn must not be 0; write a line instead' })
      .refine((value) => Math.abs(value) <= TURN_MAX_DEG, {
        error: `the turn is more than ${TURN_MAX_DEG} degrees`,
      })
      .optional(),
  })
  .superRefine(({ line, arc, turnDeg }, context) => {
    const says =
      line !== undefined && (arc !== undefined || turnDeg !== undefined)
        ? 'it is a line and an arc at once; make two segments of it'
        : line === undefined && arc === undefined
          ? 'it has neither "line" nor "arc"'
          : arc !== undefined && turnDeg === undefined
            ? 'its arc has no "turnDeg"'
            : undefined;
    if (says !== undefined) context.addIssue({ code: 'custom', path: [], message: says });
  });

const pathSchema = z
  .strictObject({ segments: z.array(segmentSchema).min(1).max(SEGMENTS_MAX) })
  .superRefine(({ segments }, context) => {
    const wholeM = segments.reduce((sum, segment) => sum + shapeOf(pieceOf(segment)).lengthM, 0);
    if (wholeM > PATH_MAX_M)
      context.addIssue({
        code: 'custom',
        path: ['segments'],
        message: `together they are ${Math.round(wholeM)} m long, more than ${PATH_MAX_M} m`,
      });
  });

const WORDS: DocumentWords = { code: 'path', kind: 'path', short: 'path', sayFault: sayPathFault };

/**
 * Reads a path to drive from the text of its file: `{ "segments": [{ "line": 30 }, { "arc": 8, "turnDeg": 90 }] }`,
 * metres and degrees, left positive.
 * @param file the file's name, for the message
 * @returns the path, or one sentence naming every segment that is wrong by its number
 */
export function readPath(text: string, file: string): Result<GuidePath> {
  const read = readDocument(text, file, pathSchema, WORDS);
  return read.ok ? ok({ pieces: read.value.segments.map(pieceOf) }) : read;
}

function pieceOf({ line, arc, turnDeg }: z.infer<typeof segmentSchema>): PathPiece {
  return arc === undefined
    ? { kind: 'line', lengthM: line ?? 0 }
    : { kind: 'arc', radiusM: arc, turnRad: toRad(turnDeg ?? 0) };
}

function sayPathFault(issue: z.core.$ZodIssue, data: unknown): string {
  const [list, index, ...path] = issue.path;
  if (list !== 'segments' || typeof index !== 'number') {
    if (list === 'segments' && issue.code === 'too_small') return 'it has no segments';
    return sayFault(issue, data, { whole: 'the path', kind: 'path' });
  }
  const segment =
    typeof data === 'object' && data !== null && 'segments' in data && Array.isArray(data.segments)
      ? data.segments[index]
      : undefined;
  const said = sayFault({ ...issue, path } as z.core.$ZodIssue, segment, {
    whole: 'it',
    kind: 'path segment',
  });
  return `segment ${index + 1}: ${said}`;
}
