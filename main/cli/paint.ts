import type { Verdict } from '../../geo/report/report.ts';

// Okabe-Ito vermilion, orange, blue and bluish green in the 256-colour palette; each always stands with its word
const COLOURS: Record<Verdict, number> = { barred: 166, tight: 214, unknown: 32, care: 250, clear: 36 };

export interface Paint {
  level(level: Verdict, text: string): string;
  strong(text: string): string;
}

/** Text as it is: for a file, or where the user asked for no colours. */
export const PLAIN: Paint = { level: (_, text) => text, strong: (text) => text };

/** For a terminal that shows colours. */
export const COLOURED: Paint = {
  level: (level, text) => `\u001b[1;38;5;${COLOURS[level]}m${text}\u001b[0m`,
  strong: (text) => `\u001b[1m${text}\u001b[0m`,
};
