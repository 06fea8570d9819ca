import type { Subject } from './report.ts';

/** The subjects as they are shown. */
export const SUBJECT_WORD: Readonly<Record<Subject, string>> = {
  height: 'Height',
  width: 'Width',
  length: 'Length',
  mass: 'Weight',
  axle: 'Axle weight',
  access: 'Access',
  barrier: 'Barrier',
  ground: 'Ground',
  water: 'Water',
  slope: 'Slope',
  narrow: 'Narrow road',
  trees: 'Trees',
  tunnel: 'Tunnel',
  ferry: 'Ferry',
  crossing: 'Hump or crossing',
  turn: 'Turn',
  swing: 'Tail swing',
  zone: 'Zone',
  note: 'Firm’s own note',
  map: 'Map',
};

/** Subjects that have findings, in the order they are met. */
export function subjectsOf(findings: readonly { readonly subject: Subject }[]): readonly Subject[] {
  return [...new Set(findings.map(({ subject }) => subject))];
}
