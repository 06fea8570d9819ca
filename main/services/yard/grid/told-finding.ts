import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Finding } from '../../../../geo/report/report.ts';
import { reportsOf } from './kept-cells.ts';
import { keptReport } from './kept-report.ts';

/** What the checks that are kept have told of a finding. */
export interface ToldFinding {
  /** the finding, by the first check that told it */
  readonly finding?: Finding;
  /** whether any check of these drives is kept */
  readonly isChecked: boolean;
}

/**
 * Looks for a finding in what is kept of the checks of drives.
 * @param kept the folder of kept cells
 */
export async function toldFinding(kept: string, drives: readonly string[], id: string): Promise<ToldFinding> {
  let isChecked = false;
  for (const drive of drives) {
    const folder = reportsOf(kept, drive);
    for (const name of await namesIn(folder)) {
      const report = await keptReport(join(folder, name));
      if (report === undefined) continue;
      isChecked = true;
      const finding = report.findings.find((each) => each.id === id);
      if (finding) return { finding, isChecked };
    }
  }
  return { isChecked };
}

async function namesIn(folder: string): Promise<readonly string[]> {
  try {
    return (await readdir(folder)).filter((name) => name.endsWith('.gz')).sort();
  } catch {
    // none of its checks is kept
    return [];
  }
}
