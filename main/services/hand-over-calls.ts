import { given } from '../../geo/given.ts';
import { ok, type Result } from '../../geo/result.ts';
import type { ValueOf } from '../contract/calls.ts';
import type { OutSheetShown } from '../contract/hand-over/hand-over-calls.ts';
import type { Settings } from '../contract/settings.ts';
import type { Services } from '../dispatch.ts';
import type { Engine } from './engine/engine.ts';
import { findBrowser } from './hand-over/find-browser.ts';
import { printPdf } from './hand-over/print-pdf.ts';
import { findHanded, keepHanded, readHanded } from './handed/handed-sheets.ts';
import { knownOf } from './handed/known-of.ts';
import { type OutRow, outSheets, sheetAgain } from './handed/out-sheets.ts';
import type { Library } from './library/library.ts';
import { notesOf } from './library/local-notes.ts';

/** Gives a sheet as PDF. @param html told which paper */
export type PrintSheet = (html: string, signal: AbortSignal) => Promise<Result<Uint8Array>>;

export interface HandOverParts {
  readonly engine: Engine;
  readonly stores: { readonly library: Library; readonly settings: { current(): Settings } };
  readonly dataFolder: string;
  now(): Date;
  /** a browser found on this computer where left out */
  readonly printSheet?: PrintSheet;
}

type HandOverServices = Pick<Services, 'handOver' | 'handedSheet' | 'sheetsOut' | 'worseThanSheet'>;

const SHEET_PDF = 'sheet.pdf';

/** The calls about what is handed over. */
export function handOverCalls(parts: HandOverParts): HandOverServices {
  const { engine, dataFolder, now } = parts;
  const { library, settings } = parts.stores;
  const of = { library, dataFolder, now };
  return {
    handOver: (request, hooks) => handOverAndKeep(parts, request, hooks),
    async handedSheet({ number }) {
      const found = findHanded(library, number);
      if (!found.ok) return found;
      const files = await readHanded(library, found.value);
      return files.ok ? ok({ number: found.value.body.number, ...asText(files.value) }) : files;
    },
    async sheetsOut() {
      await library.refresh('handed');
      return ok({ sheets: (await outSheets(of)).map(shown) });
    },
    async worseThanSheet({ number }, hooks) {
      const found = findHanded(library, number);
      if (!found.ok) return found;
      const again = await sheetAgain(found.value, of, settings.current().units);
      if (!again.ok) return again;
      const worse = await engine.ask('sheetAgain', again.value, hooks);
      return worse.ok ? ok({ worse: [...worse.value] }) : worse;
    },
  };
}

async function handOverAndKeep(
  { engine, stores: { library, settings }, now, printSheet = printByBrowser }: HandOverParts,
  request: Parameters<Services['handOver']>[0],
  hooks: Parameters<Services['handOver']>[1],
): Promise<Result<ValueOf<'handOver'>>> {
  await library.refresh('handed');
  const known = knownOf(library, undefined, request.vehicle);
  const { firm, before } = settings.current();
  const made = { made: now().toISOString(), localNotes: notesOf(library) };
  const handed = await engine.ask('handOver', { ...request, ...made, known, firm, before }, hooks);
  if (!handed.ok) return handed;
  const { number, facts, files, toPrint } = handed.value;
  hooks.onProgress({ what: 'Printing the sheet' });
  const printed = await printSheet(toPrint, hooks.signal);
  const all = printed.ok ? { ...files, [SHEET_PDF]: printed.value } : files;
  hooks.onProgress({ what: 'Keeping it in the library' });
  const kept = await keepHanded(library, { number, facts, files: all });
  const say = [
    ...(printed.ok ? [] : [printed.error.message]),
    ...(kept.ok
      ? []
      : [`Sheet ${number} is made, but not kept in the library: ${kept.error.message} Save it now.`]),
  ];
  return ok({
    number,
    files: { ...files },
    verdict: facts.verdict ?? 'unknown',
    say,
    ...given({
      replaces: facts.replaces,
      pdf: printed.ok ? Buffer.from(printed.value).toString('base64') : undefined,
    }),
  });
}

function printByBrowser(html: string, signal: AbortSignal): Promise<Result<Uint8Array>> {
  return printPdf(html, findBrowser(), { signal });
}

function asText(files: Readonly<Record<string, Uint8Array>>): Pick<ValueOf<'handedSheet'>, 'files' | 'pdf'> {
  const { [SHEET_PDF]: pdf, ...texts } = files;
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  return {
    files: Object.fromEntries(Object.entries(texts).map(([name, bytes]) => [name, decoder.decode(bytes)])),
    ...given({ pdf: pdf && Buffer.from(pdf).toString('base64') }),
  };
}

function shown({ sheet: { made, body }, leaves, since }: OutRow): OutSheetShown {
  const { number, driveName, vehicleName, drive, vehicle, verdict, leaveAt } = body;
  return {
    number,
    driveName,
    vehicleName,
    leaves,
    made,
    since: [...since],
    ...given({ drive, vehicle, verdict, leaveAt }),
  };
}
