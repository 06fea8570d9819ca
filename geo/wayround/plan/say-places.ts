import { lengthIn, type Units } from '../../units/in-units.ts';
import type { Laid } from './laying.ts';
import type { PlanStop } from './leg-parts.ts';
import { isSiteGround } from './turn-ground.ts';

/** A place whose road is farther off than this is told. Metres. */
const FAR_OFF_M = 60;
/** So many places are told one by one. */
const MOST_TOLD = 5;
/** A closed road nearer by more than this is the one that was meant. Metres. */
const NEARER_M = 5;

/**
 * What there is to say of where places were put: far from where they were asked for, or past a nearer road, and why; and
 * where the vehicle turns round. @param turnsAt places counted from 0
 */
export function sayPlaces(
  { stops }: Laid<unknown>['laying'],
  passedOver: Laid<unknown>['passedOver'],
  turnsAt: readonly number[],
  units: Units | undefined,
): string[] {
  const said = stops.flatMap((stop, i) => {
    const near = passedOver?.laying.stops[i];
    const moved = near !== undefined && near.directed.join() !== stop.directed.join();
    return moved ? [sayMoved(stop, i + 1, units)] : sayPut(stop, i + 1, units);
  });
  const turned = turnsAt.map(
    (i) =>
      `At place ${i + 1} the vehicle has to turn round, since the way in is the way out: how much room there is on that site nothing tells. Ask before you drive in.`,
  );
  const more = said.length - MOST_TOLD;
  const told = more > 1 ? [...said.slice(0, MOST_TOLD), `So are ${more} places more.`] : said;
  return [...turned, ...told, ...(passedOver === undefined ? [] : [passedOver.why])];
}

/** That the vehicle cannot leave the end but by turning round. */
export function sayFinish({ stops, base }: Laid<unknown>['laying']): string {
  const last = stops.at(-1);
  const onSite = last !== undefined && isSiteGround(base.field.costs, last);
  const where = onSite ? 'on that site' : 'on that road';
  return `At the end, place ${stops.length}, the vehicle has to turn round to leave again: the road leads nowhere else, and no place to turn is mapped. How much room there is ${where} nothing tells. Ask, or look, before you drive in.`;
}

const BETWEEN = 'What lies between is not checked.';

function put({ awayM }: PlanStop, place: number, units: Units = 'metric'): string {
  return `Place ${place} is put on a road ${lengthIn(units, awayM)} from it`;
}

function sayMoved(stop: PlanStop, place: number, units: Units | undefined): string {
  return `${put(stop, place, units)}: none of those nearer leads on for this vehicle. ${BETWEEN}`;
}

/** @param place counted from 1 */
function sayPut(stop: PlanStop, place: number, units: Units | undefined): string[] {
  const closed = sayNearer(stop, place, units);
  if (closed !== undefined) return [`${closed} ${BETWEEN}`];
  return stop.awayM > FAR_OFF_M ? [`${put(stop, place, units)}, the nearest it may use. ${BETWEEN}`] : [];
}

/** That a nearer road is closed, where one is. @param place counted from 1 */
export function sayNearer(stop: PlanStop, place: number, units: Units | undefined): string | undefined {
  const { awayM, nearer } = stop;
  if (nearer === undefined || awayM - nearer.awayM <= NEARER_M) return undefined;
  const placed = put(stop, place, units);
  return `${placed}: ${nearer.name ?? 'the nearest road'} is closed to this vehicle. ${nearer.say}`;
}
