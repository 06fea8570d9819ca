import type { Finding } from './finding.ts';
import { rankOf } from './level.ts';

/** Of the worst level that has a spare, the least against its limit; what is folded does not count. */
export function tightestOf(findings: readonly Finding[]): (Finding & { readonly spare: number }) | undefined {
  const shareOf = ({ spare, limit }: Finding) => (spare ?? 0) / Math.max(1e-9, Math.abs(limit?.value ?? 1));
  const [least] = findings
    .filter(({ spare, folded }) => spare !== undefined && folded !== true)
    .sort((a, b) => rankOf(a.level) - rankOf(b.level) || shareOf(a) - shareOf(b));
  return least?.spare === undefined ? undefined : { ...least, spare: least.spare };
}

/** The unit of a finding's spare. */
export function spareUnit({ limit, vehicle }: Finding): string {
  return limit?.unit ?? vehicle?.unit ?? 'm';
}
