import { labelText } from '../../basemap/label-text.ts';
import { widthClassOf } from '../../country/default-widths.ts';
import { ruleFor } from '../../country/table.ts';
import { given } from '../../given.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { carriagewayOf } from '../../tags/carriageway.ts';
import { textOf } from '../../tags/text-of.ts';
import type { Drive, Leg } from '../drive.ts';
import { endOf } from '../end-of.ts';
import type { StripPiece } from './strip.ts';

/** Breaks of the file have no length and make no piece. */
export function piecesOf(drive: Drive, roads: Roads, country?: string): StripPiece[] {
  const { laneM, carriagewayM: usualM } = ruleFor(country).rule.widths.value;
  const pieces: StripPiece[] = [];
  for (const leg of drive.legs) {
    const piece = pieceOf(leg, roads, (tags) => carriagewayM(tags, usualM, laneM));
    const last = pieces.at(-1);
    if (piece === undefined) continue;
    if (last !== undefined && alike(last, piece)) pieces[pieces.length - 1] = { ...last, toM: piece.toM };
    else pieces.push(piece);
  }
  return pieces;
}

const OFF_MAP_WIDTH_M = 3;
const FERRY_WIDTH_M = 7;

function pieceOf(leg: Leg, roads: Roads, widthOf: (tags: Tags) => number): StripPiece | undefined {
  if (leg.kind === 'gap' || endOf(leg) <= leg.fromM) return undefined;
  const span = { fromM: leg.fromM, toM: leg.toM };
  if (leg.kind === 'offMap') return { ...span, widthM: OFF_MAP_WIDTH_M, kind: 'offMap' };
  const tags = mappedOn(roads, leg.way);
  const name = labelText(tags['name']);
  const ref = labelText(tags['ref']);
  const named = { ...given({ name, ref }) };
  if (tags['highway'] === undefined) return { ...span, ...named, widthM: FERRY_WIDTH_M, kind: 'ferry' };
  const kind =
    isSet(tags['tunnel']) || isSet(tags['covered']) ? 'tunnel' : isSet(tags['bridge']) ? 'bridge' : 'road';
  return { ...span, ...named, widthM: widthOf(tags), kind };
}

function isSet(value: string | undefined): boolean {
  return value !== undefined && value !== 'no';
}

type ByClass = Readonly<Record<ReturnType<typeof widthClassOf>, number>>;

/** Mapped width, else lanes times the usual lane, else the usual carriageway of the class. */
function carriagewayM(tags: Tags, usualM: ByClass, laneM: ByClass): number {
  const mapped = carriagewayOf(tags);
  if (mapped !== undefined) return mapped.widthM;
  const roadClass = widthClassOf(textOf(tags, 'highway'));
  const lanes = Number(tags['lanes']);
  return lanes >= 1 && lanes <= 12 ? lanes * laneM[roadClass] : usualM[roadClass];
}

function alike(a: StripPiece, b: StripPiece): boolean {
  return a.kind === b.kind && a.name === b.name && a.ref === b.ref && Math.abs(a.widthM - b.widthM) < 0.01;
}
