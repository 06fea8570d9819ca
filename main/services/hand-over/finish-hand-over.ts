import { ok, type Result } from '../../../geo/result.ts';
import { outNow } from '../../../geo/yard/handed/out-now.ts';
import { overlapping, sayOverlap } from '../../../geo/yard/handed/overlaps.ts';
import { backDays } from '../handed/back.ts';
import { handedSheets, keepHanded } from '../handed/handed-sheets.ts';
import type { Library } from '../library/library.ts';
import type { HandedOver } from './hand-over.ts';

/** Gives a sheet as PDF. @param html told which paper */
export type PrintSheet = (html: string, signal: AbortSignal) => Promise<Result<Uint8Array>>;

/** Files by name, as they are handed over. */
export type HandedFiles = Readonly<Record<string, string | Uint8Array>>;

interface FinishHooks {
  readonly library: Library;
  readonly signal: AbortSignal;
  /** the sheet is wanted as PDF */
  readonly print?: PrintSheet | undefined;
  /** all of it is written somewhere too; where that fails nothing is kept */
  write?(files: HandedFiles): Promise<Result<unknown>>;
  /** it is written: its check may serve elsewhere */
  taken?(made: Made): Promise<void>;
  onProgress?(what: string): void;
}

/** What was made, before it is printed, written and kept. */
export type Made = Pick<HandedOver, 'number' | 'facts' | 'files' | 'toPrint' | 'say'>;

/** What became of it. */
export interface Finished {
  /** the sheet as PDF, where it was wanted and could be printed */
  readonly pdf?: Uint8Array;
  /** whether it is in the library */
  readonly kept: boolean;
  /** what could not be done, or should be known: a sentence each */
  readonly say: readonly string[];
}

export const SHEET_PDF = 'sheet.pdf';

/** Prints what was made, writes it and keeps it in the library under its number. */
export async function finishHandOver(
  made: Made,
  { library, signal, print, write, taken, onProgress }: FinishHooks,
): Promise<Result<Finished>> {
  const { number, facts, files, toPrint, say: known } = made;
  if (print) onProgress?.('printing the sheet');
  const printed = await print?.(toPrint, signal);
  if (signal.aborted) return CANCELLED;
  const pdf = printed?.ok ? printed.value : undefined;
  const all = pdf === undefined ? files : { ...files, [SHEET_PDF]: pdf };
  const written = await write?.(all);
  if (written?.ok === false) return written;
  const overlap = sayOverlapOf(facts, library);
  onProgress?.('keeping it in the library');
  const kept = await keepHanded(library, { number, facts, files: all });
  await taken?.(made);
  const say = [
    ...known,
    ...(overlap === '' ? [] : [overlap]),
    ...(printed?.ok === false ? [printed.error.message] : []),
    ...(kept.ok
      ? []
      : [`Sheet ${number} is made, but not kept in the library: ${kept.error.message} Save its files.`]),
  ];
  return ok({ kept: kept.ok, say, ...(pdf && { pdf }) });
}

/** That the vehicle is out at the same hours on what was handed over before; '' where it is not. */
function sayOverlapOf(facts: Made['facts'], library: Library): string {
  const back = backDays(library);
  const out = outNow(handedSheets(library), facts.leaveAt?.slice(0, 10) ?? '').filter(
    ({ body: { number } }) => !back.has(number) && number !== facts.replaces,
  );
  return sayOverlap(facts, overlapping(facts, out));
}

const CANCELLED = { ok: false, error: { code: 'cancelled', message: 'Cancelled.' } } as const;
