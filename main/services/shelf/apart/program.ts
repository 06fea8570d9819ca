/** Takes one file in, in a program of its own: see import-apart.ts, which starts it and hears from it. */
import { importPart } from '../import/import-part.ts';
import type { AskedApart, ToldApart } from './import-apart.ts';

function tell(told: ToldApart, then?: () => void): void {
  process.send?.(told, undefined, undefined, then);
}

async function takeIn({ source, outFile, tempFolder }: AskedApart): Promise<void> {
  let last: ToldApart;
  try {
    const result = await importPart(source, outFile, tempFolder, {
      onProgress: (progress) => tell({ kind: 'progress', progress }),
    });
    last = { kind: 'ended', result };
  } catch (error) {
    last = { kind: 'thrown', error };
  }
  tell(last, () => process.disconnect());
}

// Ctrl-C at a terminal reaches it too: whoever started it decides
process.on('SIGINT', () => {});
process.once('disconnect', () => process.exit());
process.once('message', (asked: AskedApart) => void takeIn(asked));
