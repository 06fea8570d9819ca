/** Files of ours by the format they name, and where each is used. */
const OWN_FILES = {
  'lanegauge.vehicle': {
    use: 'vehicle',
    what: 'a vehicle card',
    where: 'Open it under Cards…, or name it as --vehicle in the terminal',
  },
  'lanegauge.load': {
    use: 'load',
    what: 'a load list',
    where: 'Open it in the Load view, or name it as --load in the terminal',
  },
  'lanegauge.report': {
    use: 'report',
    what: 'the report of a check',
    where: 'It cannot be opened again: open the drive it was made of',
  },
} as const;
const PATH_FILE = {
  use: 'path',
  what: 'a path for the swing',
  where: 'Name it as --path in the terminal',
} as const;

/** Files of ours, by what they are for. */
export type OwnUse = 'vehicle' | 'load' | 'report' | 'path';

interface OwnFile {
  readonly use: OwnUse;
  /** `a vehicle card` */
  readonly what: string;
  /** a sentence without its stop */
  readonly where: string;
}

/**
 * Which file of ours this is, whatever is wrong inside: the right file in the wrong place is told by its name.
 * @param data parsed JSON
 */
export function tellOwnFile(data: unknown): OwnFile | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const own = 'format' in data ? Object.entries(OWN_FILES).find(([name]) => name === data.format) : undefined;
  if (own) return own[1];
  return 'segments' in data && Array.isArray(data.segments) ? PATH_FILE : undefined;
}
