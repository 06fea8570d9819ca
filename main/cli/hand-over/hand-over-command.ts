import { given } from '../../../geo/given.ts';
import { LEVEL_WORD } from '../../../geo/report/level.ts';
import { sayVerdict } from '../../../geo/report/say-verdict.ts';
import { listed } from '../../../geo/units/text.ts';
import { findBrowser } from '../../services/hand-over/find-browser.ts';
import { printPdf } from '../../services/hand-over/print-pdf.ts';
import { writeHandOver } from '../../services/hand-over/write-hand-over.ts';
import { shelfFolder } from '../../services/shelf/where-shelf.ts';
import { yardNamed } from '../arguments.ts';
import { checkInThread } from '../check-thread.ts';
import type { CheckDone } from '../check-work.ts';
import { jsonText } from '../json-text.ts';
import { EXIT_INTERRUPTED, refuse, type Terminal } from '../terminal.ts';
import { wrap } from '../wrap.ts';
import { readHandOverArguments } from './hand-over-arguments.ts';

/** `lanegauge hand-over`. @returns 0 nothing barred, 1 something barred, 2 input could not be used, 130 interrupted */
export async function handOverCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const read = readHandOverArguments(words, terminal.folder);
  if (!read.ok) return refuse(read.error.message, terminal);
  const { json, outFolder, pdf, yardFolder, noNotes, ...asked } = read.value;
  const { progress, signal, dataFolder } = terminal;
  const yard = yardNamed({ noNotes, ...given({ yardFolder }) }, dataFolder);
  const done = await checkInThread(
    { request: { ...asked, shelf: shelfFolder(dataFolder), ...given({ yard }) }, files: 'hand over' },
    { onProgress: (what, share) => progress.show(what, share), signal },
  );
  if (!done.ok || signal.aborted) {
    progress.clear();
    return signal.aborted || done.ok ? EXIT_INTERRUPTED : refuse(done.error.message, terminal);
  }
  const { report, files, handedOver } = done.value;
  if (handedOver === undefined) throw new Error('a handing-over came without what it is made of');
  if (pdf) progress.show('printing the sheet');
  const printed = pdf ? await printPdf(handedOver.toPrint, findBrowser(), { signal }) : undefined;
  progress.clear();
  if (signal.aborted) return EXIT_INTERRUPTED;
  const all = printed?.ok === true ? { ...files, 'sheet.pdf': printed.value } : files;
  const written = await writeHandOver(outFolder, all, { route: handedOver.route, signal });
  if (signal.aborted) return EXIT_INTERRUPTED;
  if (!written.ok) return refuse(written.error.message, terminal);
  if (printed?.ok === false) terminal.complain(printed.error.message);
  terminal.out(
    json
      ? jsonText(report)
      : sayHandedOver(done.value, handedOver.number, outFolder, terminal.width, written.value),
  );
  return report.verdict === 'barred' ? 1 : 0;
}

function sayHandedOver(
  { report }: CheckDone,
  number: string,
  folder: string,
  width: number,
  names: readonly string[],
): string {
  const lines = [
    `${LEVEL_WORD[report.verdict].toUpperCase()}: ${sayVerdict(report)}`,
    `Sheet ${number}, in ${folder}: ${listed(names)}.`,
    ...report.cautions.slice(0, 1),
  ];
  return `${lines.flatMap((line) => wrap(line, width)).join('\n')}\n`;
}
