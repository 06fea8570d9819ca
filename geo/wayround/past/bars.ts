import type { Finding } from '../../report/finding.ts';

/** Findings of a drive that one way is to pass together. Metres along the drive. */
export interface Bar {
  readonly findings: readonly Finding[];
  readonly fromM: number;
  readonly toM: number;
}

/** Bars closer than this are gone round at once: between them the drive is hardly worth coming back to. Metres. */
const TOGETHER_M = 1000;

/** Neighbouring findings together, in driving order. */
export function barsOf(findings: readonly Finding[]): Bar[] {
  const bars: Bar[] = [];
  for (const finding of [...findings].sort((a, b) => a.fromM - b.fromM)) {
    const last = bars.at(-1);
    const alone = { findings: [finding], fromM: finding.fromM, toM: finding.toM };
    if (last !== undefined && finding.fromM - last.toM < TOGETHER_M)
      bars[bars.length - 1] = together(last, alone);
    else bars.push(alone);
  }
  return bars;
}

export function together(a: Bar, b: Bar): Bar {
  return {
    findings: [...a.findings, ...b.findings],
    fromM: Math.min(a.fromM, b.fromM),
    toM: Math.max(a.toM, b.toM),
  };
}
