import { MIN_ZOOM } from './draw-kind.ts';
import { type DrawKind, type LabelKind, ROAD_KINDS } from './features.ts';
import { joinLines } from './join-lines.ts';
import { labelText } from './label-text.ts';

/** A road or river as long as it bears one name, along which the name may be written. */
export interface NameLine {
  readonly say: string;
  readonly kind: Extract<LabelKind, 'road' | 'ref' | 'water'>;
  readonly rank: number;
  readonly minZoom: number;
  readonly refs: Uint32Array;
  /** length along the line at each position, unit square; made when first needed */
  along?: Float64Array;
}

interface Named {
  readonly kind: DrawKind;
  readonly refs: Uint32Array;
  readonly area: boolean;
  readonly tags: Readonly<Record<string, string>>;
}

/** Kinds whose number is worth a plate. */
const WITH_REF: ReadonlySet<DrawKind> = new Set(['motorway', 'trunk', 'primary', 'secondary', 'tertiary']);
const WITH_NAME: ReadonlySet<DrawKind> = new Set([
  ...ROAD_KINDS.filter((kind) => kind !== 'rail' && kind !== 'railMinor'),
  'river',
  'stream',
]);

/** Gathers what bears one name and is of one kind into lines as long as they go. */
export function nameLines(drawn: readonly Named[]): NameLine[] {
  const groups = new Map<string, { readonly line: Omit<NameLine, 'refs'>; readonly pieces: Uint32Array[] }>();
  const add = (line: Omit<NameLine, 'refs'>, drawnKind: DrawKind, refs: Uint32Array) => {
    const key = `${line.kind} ${drawnKind} ${line.say}`;
    const there = groups.get(key);
    if (there) there.pieces.push(refs);
    else groups.set(key, { line, pieces: [refs] });
  };
  for (const { kind, area, refs, tags } of drawn) {
    if (area) continue;
    const order = ROAD_KINDS.length - ROAD_KINDS.indexOf(kind as (typeof ROAD_KINDS)[number]);
    const ref = WITH_REF.has(kind) ? labelText(tags['ref']?.split(';')[0]) : undefined;
    if (ref !== undefined && ref.length <= 10)
      add({ say: ref, kind: 'ref', rank: 30 + order, minZoom: Math.max(8, MIN_ZOOM[kind] + 1) }, kind, refs);
    const say = WITH_NAME.has(kind) ? labelText(tags['name']) : undefined;
    if (say === undefined) continue;
    const water = kind === 'river' || kind === 'stream';
    const minZoom = water ? 12 : Math.max(13, MIN_ZOOM[kind] + 2);
    add({ say, kind: water ? 'water' : 'road', rank: water ? 48 : 50 + order, minZoom }, kind, refs);
  }
  return [...groups.values()].flatMap(({ line, pieces }) =>
    joinLines(pieces).map((refs) => ({ ...line, refs })),
  );
}
