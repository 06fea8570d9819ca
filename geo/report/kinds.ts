/** What a limit on a size or mass may come to, whatever it limits. */
const OF_LIMITS = [
  /** a figure held against the vehicle */
  'limit',
  /** a figure in some lanes only */
  'lane',
  /** a sign mapped beside the road, and no limit on the road itself */
  'sign',
  /** a word stands in place of a figure and does not settle it */
  'no figure',
  /** a figure that no road has */
  'not believed',
  /** the value cannot be read */
  'unreadable',
  /** the key, or the condition it holds under, is not understood */
  'not understood',
  /** a figure of the firm's own that the map lacks */
  'measured',
] as const;

/**
 * What a finding is about, and within that the closed list of what it can be. Code that treats some findings
 * otherwise reads these; it never reads their sentences or ids.
 */
export const KINDS = {
  height: [...OF_LIMITS, 'bridge above', 'building above', 'gateway', 'roof'],
  width: [...OF_LIMITS, 'gap'],
  length: OF_LIMITS,
  mass: OF_LIMITS,
  axle: OF_LIMITS,
  access: [
    'closed',
    'private',
    'permit',
    'no through traffic',
    'unsuitable',
    'unclear',
    'not understood',
    'lane',
    'lorries',
    'one-way',
    'turn restriction',
  ],
  barrier: ['gate', 'bollard', 'height bar', 'width bar', 'other barrier', 'along the road'],
  ground: [
    'impassable',
    'very soft',
    'very rough',
    'soft',
    /** guessed from the land it lies on */
    'may be soft',
    'loose',
    'not mapped',
    /** where the drive ends off the road, mapped as soft, or guessed from the land */
    'soft pitch',
    'pitch',
    'part of the year',
  ],
  water: ['ford', 'deep ford', 'not for vehicles', 'tidal', 'floods'],
  slope: ['climb', 'descent', 'no figure', 'break of slope'],
  narrow: ['too narrow', 'hardly wider', 'single track', 'give way', 'creep past', 'bus', 'unreadable'],
  trees: ['trees'],
  tunnel: ['tunnel'],
  /** a size to book where no limit is mapped, the ramp, the gas on board */
  ferry: ['to book', 'ramp', 'gas'],
  crossing: ['level crossing', 'tram', 'hump', 'narrowing', 'bumps'],
  /** `back up once` on mapped widths, `second go` where usual figures stand in */
  turn: ['other lane', 'whole road', 'second go', 'back up once'],
  /** what the tail goes out over; `circle` where it is big and there is no line to cross */
  swing: ['kerb', 'oncoming traffic', 'lane beside', 'circle'],
  zone: ['low emission', 'limited traffic'],
  /** the firm's own words on a place */
  note: ['care'],
  map: [
    'nothing on the map',
    'incomplete',
    'off the map',
    'gap in the route',
    'guessed',
    'doubtful road',
    'not understood',
  ],
} as const;

export type Subject = keyof typeof KINDS;

export const SUBJECTS = Object.keys(KINDS) as Subject[];

export type KindOf<S extends Subject> = (typeof KINDS)[S][number];

export type Kind = KindOf<Subject>;

export const ALL_KINDS: readonly Kind[] = Object.values(KINDS).flat();

/** A subject with one of its own kinds. */
export type About<S extends Subject = Subject> = {
  [One in S]: { readonly subject: One; readonly kind: KindOf<One> };
}[S];

/** Whether a kind is one of the subject's own. */
export function isKindOf(subject: Subject, kind: string): boolean {
  return (KINDS[subject] as readonly string[]).includes(kind);
}

/**
 * What would settle a finding.
 *
 * - `time`: a leave time
 * - `sign`: reading the sign that stands there
 * - `measure`: a tape
 * - `route`: a file with more points
 * - `permission`: asking who owns or grants it
 */
export const WANTS = ['time', 'sign', 'measure', 'route', 'permission'] as const;
export type Wants = (typeof WANTS)[number];
