import { existsSync } from 'node:fs';
import { given } from '../../geo/given.ts';
import { visorCards } from '../../geo/handover/card/visor-cards.ts';
import { ok, type Result } from '../../geo/result.ts';
import { capital } from '../../geo/units/text.ts';
import type { ValueOf } from '../contract/calls.ts';
import type { OutSheetShown } from '../contract/hand-over/hand-over-calls.ts';
import type { Services } from '../dispatch.ts';
import { readFaces } from './hand-over/faces.ts';
import { findBrowser } from './hand-over/find-browser.ts';
import { finishHandOver, SHEET_PDF } from './hand-over/finish-hand-over.ts';
import { printPdf } from './hand-over/print-pdf.ts';
import { handOverPairs } from './hand-over-pairs.ts';
import type { HandOverParts } from './hand-over-parts.ts';
import { tellBack } from './handed/back.ts';
import { findHanded, readHanded } from './handed/handed-sheets.ts';
import { knownOf } from './handed/known-of.ts';
import { type OutRow, outSheets, sheetAgain } from './handed/out-sheets.ts';
import { notesOf } from './library/local-notes.ts';
import { saySheetsGone } from './library/say-library.ts';
import { localDay } from './local-day.ts';
import { takeCheck } from './yard/grid/take-check.ts';
import { gridOfLibrary } from './yard/yard-of.ts';

type HandOverServices = Pick<
  Services,
  'handOver' | 'handOverPairs' | 'visorCards' | 'handedSheet' | 'sheetsOut' | 'sheetBack' | 'worseThanSheet'
>;

/** The calls about what is handed over. */
export function handOverCalls(parts: HandOverParts): HandOverServices {
  const { engine, dataFolder, now } = parts;
  const { library, settings } = parts.stores;
  const of = { library, dataFolder, now };
  const sheetsNow = async () => {
    const sheets = (await outSheets(of)).map(shown);
    const isGone = sheets.length > 0 && !existsSync(library.folder);
    return { sheets, ...given({ gone: isGone ? saySheetsGone(library.folder) : undefined }) };
  };
  return {
    handOver: (request, hooks) => handOverAndKeep(parts, request, hooks),
    handOverPairs: (request, hooks) =>
      handOverPairs({ printSheet: printByBrowser, ...parts }, request, hooks),
    async visorCards() {
      const cards = parts.stores.fleet.current().map(({ card }) => card);
      return ok({ html: visorCards(cards, { faces: await readFaces(), made: now().toISOString() }) });
    },
    async handedSheet({ number }) {
      const found = findHanded(library, number);
      if (!found.ok) return found;
      const files = await readHanded(library, found.value);
      return files.ok ? ok({ number: found.value.body.number, ...asText(files.value) }) : files;
    },
    async sheetsOut() {
      await library.refresh('handed');
      await library.refresh('back');
      return ok(await sheetsNow());
    },
    async sheetBack({ number, back }) {
      const found = findHanded(library, number);
      if (!found.ok) return found;
      const told = await tellBack(library, found.value.body.number, back ? localDay(now()) : undefined);
      return told.ok ? ok(await sheetsNow()) : told;
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
  { engine, stores, dataFolder, now, printSheet = printByBrowser }: HandOverParts,
  request: Parameters<Services['handOver']>[0],
  hooks: Parameters<Services['handOver']>[1],
): Promise<Result<ValueOf<'handOver'>>> {
  const { library } = stores;
  await library.refresh('handed');
  const known = knownOf(library, undefined, request.vehicle);
  const settings = stores.settings.current();
  const { firm, before } = settings;
  const fleet = stores.fleet.current();
  const made = { made: now().toISOString(), localNotes: notesOf(library) };
  const handed = await engine.ask('handOver', { ...request, ...made, known, firm, before }, hooks);
  if (!handed.ok) return handed;
  const { number, facts, files } = handed.value;
  const finished = await finishHandOver(handed.value, {
    library,
    signal: hooks.signal,
    print: printSheet,
    taken: (made) => takeCheck(gridOfLibrary({ library, settings, fleet, dataFolder, now }), made),
    onProgress: (what) => hooks.onProgress({ what: capital(what) }),
  });
  if (!finished.ok) return finished;
  const { pdf, say } = finished.value;
  return ok({
    number,
    files: { ...files },
    verdict: facts.verdict ?? 'unknown',
    say: [...say],
    ...given({ replaces: facts.replaces, pdf: pdf && Buffer.from(pdf).toString('base64') }),
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

function shown({ sheet: { made, body }, leaves, since, standing, driveNow, overlap }: OutRow): OutSheetShown {
  const { number, driveName, vehicleName, drive, vehicle, verdict, leaveAt } = body;
  return {
    number,
    driveName,
    vehicleName,
    leaves,
    made,
    since: [...since],
    standing,
    overlap,
    ...given({ driveNow, drive, vehicle, verdict, leaveAt }),
  };
}
