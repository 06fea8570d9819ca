import { checkDrive } from '../../check.ts';
import type { Drive } from '../../drive/drive.ts';
import { stretchesOf } from '../../drive/match/lay-legs.ts';
import { readLeaving } from '../../drive/times/leaving.ts';
import { given } from '../../given.ts';
import type { Problem } from '../../result.ts';
import { brokenTurns, lengthOf } from '../along/splice.ts';
import { clockFor } from '../search/clock.ts';
import type { Question } from '../search/question.ts';
import { denseRoute } from './dense-route.ts';
import type { LaidParts, PlanStop } from './leg-parts.ts';
import type { PlanInput, Planned } from './plan-input.ts';

export interface Checked extends Pick<Planned, 'route' | 'drive' | 'report' | 'stops'> {
  readonly clockAt: ReturnType<typeof clockFor> | undefined;
}

/** What is driven as a drive, checked by the checker itself; places between where the vehicle stops are its business. */
export function checkParts(
  input: PlanInput,
  { parts, placesM }: LaidParts,
  { stops, field }: { readonly stops: readonly PlanStop[]; readonly field: Question['field'] },
): Checked | { readonly fault: Problem } {
  const { roads, country, leave, name = '' } = input;
  const { graph } = field.costs;
  const legs = stretchesOf(parts, 0, graph);
  const bare: Drive = { lengthM: lengthOf(parts), legs, guessed: [], doubtful: [], brokenTurns: [] };
  const drive = { ...bare, brokenTurns: brokenTurns(bare, roads, graph) };
  const route = denseRoute(drive, roads, name);
  const read = leave === undefined ? undefined : readLeaving(leave, drive, roads, country);
  if (read?.ok === false) return { fault: read.error };
  const leaving = read?.value;
  const { places: _, prefer: __, leave: ___, name: ____, ...rest } = input;
  const between = stops.flatMap(({ stop, at }, i) =>
    stop && i > 0 && i + 1 < stops.length ? [{ ...at, ...given({ atM: placesM[i] }) }] : [],
  );
  const report = checkDrive({
    ...rest,
    route,
    file: `${name || 'plan'}.gpx`,
    drive,
    stops: between,
    ...given({ leaving }),
  });
  // written down, the drive tells where it stops
  const planned = { ...route, ...(between.length > 0 && { stops: between }) };
  return {
    route: planned,
    drive,
    report,
    stops: between,
    clockAt: leaving && clockFor(roads, leaving, country),
  };
}
