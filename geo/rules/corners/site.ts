import type { CountryRule } from '../../country/rule.ts';
import { roadSetting } from '../../drive/times/road-setting.ts';
import type { DrivenTurn } from '../../drive/turns/driven-turn.ts';
import { toRad } from '../../earth/angles.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import type { SwingVehicle } from '../../swing/swing-vehicle.ts';
import { type RoadRoom, roadRoom } from './road-room.ts';

/** Kerbs of a roundabout's entries and exits. Metres; 10 to 20 in the design rules, from memory. */
const FLICK_KERB_M = 10;

/** One turn of a drive with the widths around it, for one vehicle. Metres. */
export interface CornerSite extends RoadSite {
  readonly vehicle: SwingVehicle;
}

/** What of it is the same for every vehicle. */
interface RoadSite {
  readonly driven: DrivenTurn;
  /** the side steered to */
  readonly side: 'left' | 'right';
  readonly driveSide: 'left' | 'right';
  readonly entry: RoadRoom;
  readonly exit: RoadRoom;
  /** of the roads before and after */
  readonly before: Tags;
  readonly after: Tags;
  readonly kerbRadiusM: number;
  readonly nodeTags: Tags;
}

const known = new WeakMap<DrivenTurn, { readonly rule: CountryRule; readonly site: RoadSite }>();

/**
 * Room, kerb and tags around a turn, by the map and by the country's usual figures; looked up once a turn.
 * @param roads those that the turn was found on
 */
export function siteOf(driven: DrivenTurn, roads: Roads, rule: CountryRule): RoadSite {
  const before = known.get(driven);
  if (before?.rule === rule) return before.site;
  const site = lookAround(driven, roads, rule);
  known.set(driven, { rule, site });
  return site;
}

function lookAround(driven: DrivenTurn, roads: Roads, rule: CountryRule): RoadSite {
  const driveSide = rule.driveSide.value;
  const side = driven.kind === 'u-turn' ? otherSide(driveSide) : driven.side;
  const before = mappedOn(roads, driven.entry.way);
  const after = mappedOn(roads, driven.exit.way);
  const [urbanBefore, urbanAfter] = [roadSetting(before).urban, roadSetting(after).urban];
  const room = { side, driveSide, widths: rule.widths.value };
  return {
    driven,
    side,
    driveSide,
    entry: roadRoom(before, { ...room, forward: driven.entry.forward, urban: urbanBefore }),
    exit: roadRoom(after, { ...room, forward: driven.exit.forward, urban: urbanAfter }),
    before,
    after,
    kerbRadiusM: driven.part
      ? FLICK_KERB_M
      : rule.kerbRadiusM.value[urbanBefore || urbanAfter ? 'urban' : 'rural'],
    nodeTags: roads.nodes.tags.get(driven.node) ?? {},
  };
}

export function otherSide(side: 'left' | 'right'): 'left' | 'right' {
  return side === 'left' ? 'right' : 'left';
}

/** How far the heading changes, radians; a ring driven farther round counts as half a turn. */
export function turnRadOf({ turnDeg }: DrivenTurn): number {
  return toRad(Math.min(180, turnDeg));
}
