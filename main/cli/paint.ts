import type { Verdict } from '../../geo/report/report.ts';

// Okabe-Ito vermilion, orange, blue and bluish green in the 256-colour palette; each always stands with its word
const COLOURS: Record<Verdict, number> = { barred: 166, tight: 214, unknown: 32, care: 250, clear: 36 };

export interface Paint {
  level(level: Verdict, text: string): string;
  strong(text: string): string;
}

/** Colours for a terminal, or plain text where there is none or the user asked for none. */
export function paintFor(coloured: boolean): Paint {
  if (!coloured) return { level: (_, text) => text, strong: (text) => text };
  return {
    level: (level, text) => `\u001b[1;38;5;${COLOURS[level]}m${text}\u001b[0m`,
    strong: (text) => `\u001b[1m${text}\u001b[0m`,
  };
}
