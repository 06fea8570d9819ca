import { z } from 'zod';
import { VERDICTS } from '../../../geo/report/level.ts';
import { SINCE } from '../../../geo/yard/handed/say-since.ts';
import { checkRequestSchema } from '../check-request.ts';
import { workSchema } from '../work.ts';
import { libraryIdSchema } from '../yard/yard.ts';
import { PAIRS_MOST } from './pairs-most.ts';

const number = z.string().max(20);
const nothing = z.never();

/** What was handed over, as it is kept: text by file name, and the sheet as PDF where one was made. */
const handedSchema = z.strictObject({
  number,
  files: z.record(z.string(), z.string()),
  /** base64 */
  pdf: z.string().optional(),
});

/** A sheet that is out. */
const outSheetSchema = z.strictObject({
  number,
  driveName: z.string(),
  vehicleName: z.string(),
  /** ids in the library, where they stand in it */
  drive: z.string().optional(),
  vehicle: z.string().optional(),
  verdict: z.enum(VERDICTS).optional(),
  leaveAt: z.string().optional(),
  leaves: z.enum(['coming', 'any day', 'left']),
  /** ISO 8601 */
  made: z.string(),
  /** why a check would say otherwise today */
  since: z.array(z.enum(SINCE)),
  standing: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.enum(['out', 'due']) }),
    /** YYYY-MM-DD */
    z.strictObject({ kind: z.literal('back'), on: z.string() }),
  ]),
  /** what its drive is called now, where that is another name */
  driveNow: z.string().optional(),
  /** that its vehicle is out elsewhere at the same hours, a sentence; '' where it is not */
  overlap: z.string(),
});
export type OutSheetShown = z.infer<typeof outSheetSchema>;

const sheets = z.strictObject({
  sheets: z.array(outSheetSchema),
  /** a sentence, where the library is not there: none can be checked again */
  gone: z.string().optional(),
});

const pair = { drive: libraryIdSchema, vehicle: libraryIdSchema };

/** What is heard of one pair. */
const pairNewsSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('doing'), ...pair, what: z.string() }),
  z.strictObject({
    kind: z.literal('made'),
    ...pair,
    number,
    verdict: z.enum(VERDICTS),
    replaces: number.optional(),
    /** whether a sheet.pdf is among its files */
    pdf: z.boolean(),
    say: z.array(z.string()),
  }),
  z.strictObject({ kind: z.literal('barred'), ...pair }),
  z.strictObject({ kind: z.literal('failed'), ...pair, say: z.string() }),
]);
export type PairNews = z.infer<typeof pairNewsSchema>;

/** The calls about what is handed over. */
export const HAND_OVER_CALLS = {
  /**
   * Checks an open drive anew, makes everything that the driver takes along, and keeps it in the library under its sheet
   * number. A barred one is refused (`hand-over.barred`) unless that was asked for.
   */
  handOver: {
    request: z.strictObject({ ...checkRequestSchema.shape, evenBarred: z.boolean().optional() }),
    progress: workSchema,
    value: z.strictObject({
      ...handedSchema.shape,
      verdict: z.enum(VERDICTS),
      /** the sheet that it takes the place of */
      replaces: number.optional(),
      /** what could not be done, or should be known: a sentence each */
      say: z.array(z.string()),
    }),
  },
  /**
   * Hands over pairs of drive and vehicle of the library, one after the other, and keeps each under its sheet number. Each
   * is heard of as it is done; what is barred waits for a word more.
   */
  handOverPairs: {
    request: z.strictObject({
      pairs: z.array(z.strictObject(pair)).min(1).max(PAIRS_MOST),
      evenBarred: z.boolean(),
    }),
    progress: pairNewsSchema,
    value: z.strictObject({}),
  },
  /** A visor card a page of every vehicle of the fleet, as one file to print. */
  visorCards: {
    request: z.strictObject({}),
    progress: nothing,
    value: z.strictObject({ html: z.string() }),
  },
  /** A handing-over again, byte for byte as it was. */
  handedSheet: { request: z.strictObject({ number }), progress: nothing, value: handedSchema },
  /** The sheets that are out and those whose vehicle is back: barred ones first, then by the coming leave days. */
  sheetsOut: { request: z.strictObject({}), progress: nothing, value: sheets },
  /** Keeps that a sheet's vehicle is back, or that it is not. */
  sheetBack: {
    request: z.strictObject({ number, back: z.boolean() }),
    progress: nothing,
    value: sheets,
  },
  /** Checks a sheet's drive again on the shelf: what is new or worse, a sentence each. */
  worseThanSheet: {
    request: z.strictObject({ number }),
    progress: workSchema,
    value: z.strictObject({ worse: z.array(z.string()) }),
  },
} as const;
