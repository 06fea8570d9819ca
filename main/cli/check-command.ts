import { checkFromFiles } from '../services/check-drive.ts';
import { writeNew } from '../services/files/write-new.ts';
import { readCheckArguments } from './arguments.ts';
import { PLAIN } from './paint.ts';
import { printReport } from './print-report.ts';
import { EXIT_INTERRUPTED, type Terminal } from './terminal.ts';

/** `lanegauge check`. @returns 0 nothing barred, 1 something barred, 2 input could not be used, 130 interrupted */
export async function checkCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const read = readCheckArguments(words, terminal.folder);
  if (!read.ok) return refuse(read.error.message, terminal);
  const { json, outFolder, ...request } = read.value;
  const { progress, signal } = terminal;
  const checked = await checkFromFiles(request, {
    onProgress: (what, share) => progress.show(what, share),
    signal,
    now: terminal.now,
  });
  progress.clear();
  if (signal.aborted) return EXIT_INTERRUPTED;
  if (!checked.ok) return refuse(checked.error.message, terminal);
  const { report } = checked.value;
  if (outFolder !== undefined) {
    // a large geometry library stands behind it, which a plain check need not wait for
    const { reportFiles } = await import('../services/export/report-files.ts');
    const text = printReport(report, 100, PLAIN);
    const files = reportFiles(checked.value, text);
    if (!files.ok) return refuse(files.error.message, terminal);
    const written = await writeNew(outFolder, files.value, signal);
    if (signal.aborted) return EXIT_INTERRUPTED;
    if (!written.ok) return refuse(written.error.message, terminal);
  }
  terminal.out(
    json ? `${JSON.stringify(report, null, 2)}\n` : printReport(report, terminal.width, terminal.paint),
  );
  return report.verdict === 'barred' ? 1 : 0;
}

function refuse(sentence: string, terminal: Terminal): number {
  terminal.complain(sentence);
  return 2;
}
