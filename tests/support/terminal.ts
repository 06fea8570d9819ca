import { PLAIN } from '../../main/cli/paint.ts';
import type { Terminal } from '../../main/cli/terminal.ts';

/** A terminal that keeps what is said on it. */
export function terminalOf(folder: string): {
  readonly terminal: Terminal;
  readonly said: { out: string; complaint: string; steps: string[] };
} {
  const said = { out: '', complaint: '', steps: [] as string[] };
  const terminal: Terminal = {
    out(text) {
      said.out += text;
    },
    complain(sentence) {
      said.complaint += sentence;
    },
    progress: {
      show: () => {},
      steps: (what) => void (said.steps.at(-1) === what || said.steps.push(what)),
      clear: () => {},
    },
    paint: PLAIN,
    width: 100,
    folder,
    dataFolder: folder,
    signal: new AbortController().signal,
    now: () => new Date(0),
  };
  return { terminal, said };
}
