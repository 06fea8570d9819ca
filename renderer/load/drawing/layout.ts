import { largest } from '../../../geo/lists.ts';
import { stowPlaces, tailM } from '../../../geo/load/places/stow-places.ts';
import { cut } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { RACK } from '../../../geo/vehicle/place-names.ts';

/** Where everything lies on the paper, pixels. */
export interface Layout {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerM: number;
  /** x of a distance behind the front axle */
  x(m: number): number;
  /** y of a height above the ground */
  y(m: number): number;
  readonly groundPx: number;
  /** from nose to the end of body or rack, behind the front axle */
  readonly noseM: number;
  readonly endM: number;
}

/** Room for words: names of places above, arms and the bars' leaders below, and beside the vehicle. */
const ABOVE_PX = 8;
const BELOW_PX = 42;
const LEFT_PX = 28;
const RIGHT_PX = 44;
export const FLAG_ROW_PX = 17;

/**
 * The side of a vehicle to scale, as large as width and height allow, in the middle of the paper.
 * @param flagRows rows of names above the roof
 * @param bodyPx the most that the vehicle's height may take
 */
export function layOut(card: VehicleCard, widthPx: number, bodyPx: number, flagRows: number): Layout {
  const noseM = -card.frontOverhangM;
  const endM = tailM(card) + (card.rack?.fitted ? card.rack.lengthM : 0);
  const across = Math.max(120, widthPx - LEFT_PX - RIGHT_PX);
  const pxPerM = Math.min(across / (endM - noseM), bodyPx / card.heightM);
  const left = LEFT_PX + (across - (endM - noseM) * pxPerM) / 2;
  const groundPx = ABOVE_PX + flagRows * FLAG_ROW_PX + card.heightM * pxPerM;
  return {
    widthPx,
    heightPx: Math.ceil(groundPx + BELOW_PX),
    pxPerM,
    x: (m) => left + (m - noseM) * pxPerM,
    y: (m) => groundPx - m * pxPerM,
    groundPx,
    noseM,
    endM,
  };
}

/** The floor that things stand on, and the wheels, metres: usual ones, for the shape alone. */
export const FLOOR_M = 0.78;
export const WHEEL_M = 0.34;
export const UNDERSIDE_M = 0.4;

/** A name over the roof with a pole down to its place. */
export interface Flag {
  /** as the list names the place */
  readonly place: string;
  /** as it is lettered */
  readonly name: string;
  readonly xM: number;
  readonly row: number;
}

const LETTER_PX = 7;
const NAME_MOST = 22;

/**
 * Names lockers, rack and the fixed seats' places, each to the right of its own pole; rows rise so that no pole
 * crosses a name.
 */
export function flagsOf(card: VehicleCard, pxPerM: number): Flag[] {
  const places = stowPlaces(card).sort((a, b) => b.xM - a.xM);
  const flags: Flag[] = [];
  for (const { name: place, xM } of places) {
    const name = place === RACK ? 'Rack' : place;
    const short = cut(name, NAME_MOST);
    const reachM = ([...short].length * LETTER_PX + 12) / pxPerM;
    const crossed = flags.filter((flag) => flag.xM < xM + reachM);
    flags.push({ place, name: short, xM, row: 1 + Math.max(-1, largest(crossed.map(({ row }) => row))) });
  }
  return flags;
}
