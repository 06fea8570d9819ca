import { useEffect } from 'preact/hooks';
import { clockText } from '../../geo/clock/print-times.ts';
import type { ServiceOnWay } from '../../geo/day/service.ts';
import { LEVEL_WORD } from '../../geo/report/level.ts';
import { DO_SERVICE } from '../../geo/services/kinds.ts';
import { distanceIn } from '../../geo/units/in-units.ts';
import { capital, clip, counted, listed, lowerFirst } from '../../geo/units/text.ts';
import type { ValueOf } from '../../main/contract/calls.ts';
import { checkAsked } from '../actions/recheck.ts';
import { Doing } from '../look/doing.tsx';
import { VerdictMark } from '../look/level-mark.tsx';
import { report } from '../state/check.ts';
import { dayPlan, services } from '../state/day.ts';
import { settings } from '../state/kept.ts';
import { sayMore, takeService } from './change-day.ts';
import { findServices, hideServices } from './find-services.ts';

/** Places on the way for what is to be done, the least detour first. */
export function ServicesOnWay() {
  const wanted = dayPlan.value.before ?? [];
  const asked = services.value;
  // found for another drive, time or stop they would tell the wrong minute
  const of = JSON.stringify(checkAsked.value);
  useEffect(() => hideServices, [of]);
  return (
    <div class="day-services">
      <p>
        <button
          type="button"
          disabled={wanted.length === 0}
          aria-describedby="day-wanted"
          onClick={() => findServices(wanted)}
        >
          Find places on the way
        </button>{' '}
        <span id="day-wanted" class="small soft">
          {wanted.length === 0 ? 'Tick above what for.' : 'Within 3 km of the drive.'}
        </span>
      </p>
      <div role="status">
        {asked?.doing && <Doing doing={asked.doing} />}
        {asked?.problem !== undefined && <p class="problem">{clip(asked.problem, 600)}</p>}
        {asked?.found && <p class="small">{sayFound(asked.found)}</p>}
      </div>
      {asked?.found && <Found found={asked.found} />}
    </div>
  );
}

type FoundNow = ValueOf<'services'>;

function sayFound({ services: found, not, leftOut, say }: FoundNow): string {
  const parts = [
    found.length === 0
      ? 'No place that this vehicle reaches was found within 3 km of the drive.'
      : `${capital(counted(found.length, 'place'))}; what surely has it first, then the least detour. Each way there is checked like the drive.`,
    ...(not.length > 0 ? [`${counted(not.length, 'place')} it cannot use: see below.`] : []),
    ...(leftOut > 0 ? [`${counted(leftOut, 'more place')} not shown.`] : []),
    ...say,
  ];
  return parts.join(' ');
}

function Found({ found: { services: found, not } }: { found: FoundNow }) {
  return (
    <>
      <ol class="day-found" aria-label="Places on the way">
        {found.map((service) => (
          <Place key={`${service.osm.type}${service.osm.id} ${service.nearM}`} service={service} />
        ))}
      </ol>
      {not.length > 0 && (
        <details class="small">
          <summary>{capital(counted(not.length, 'place'))} this vehicle cannot use</summary>
          <ul>
            {not.map(({ osm, name, nearM, why }) => (
              <li key={`${osm.type}${osm.id} ${nearM}`}>
                <bdi>{clip(name, 60)}</bdi>{' '}
                <span class="soft">by {distanceIn(settings.value.units, nearM)}</span>: {clip(why, 300)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Place({ service }: { service: ServiceOnWay }) {
  const { name, offers, arriveAt, open, extraS, way, nearM, say, spareS } = service;
  const date = report.value?.leaveAt;
  const { units } = settings.value;
  const has = offers.filter(({ is }) => is === 'yes').map(({ kind }) => lowerFirst(DO_SERVICE[kind]));
  return (
    <li class="day-place">
      <div>
        <p>
          <b>
            <bdi>{clip(name, 60)}</bdi>
          </b>
          {has.length > 0 && <>: {listed(has)}</>}
        </p>
        <p>
          <b>{capital(sayMore(extraS))}</b>
          {way && way.extraM > 0 && <>, {distanceIn(units, way.extraM)}</>}
          <span class="soft">, off the drive at {distanceIn(units, way?.fromM ?? nearM)}</span>
        </p>
        {way && way.verdict !== 'clear' && (
          <p class="small day-place-verdict">
            <VerdictMark verdict={way.verdict} size={15} /> On the way there:{' '}
            {lowerFirst(LEVEL_WORD[way.verdict])}
          </p>
        )}
        <p class="small">
          {arriveAt !== undefined && (
            <>
              There at <b>{clockText(arriveAt, date)}</b>.{' '}
            </>
          )}
          {open && <span class={`day-${open.is}`}>{clip(open.say, 200)} </span>}
          {spareS !== undefined && spareS < 0 && (
            <span class="day-late">With this stop the return hour is missed. </span>
          )}
          <span class="soft">{clip(say.join(' '), 500)}</span>
        </p>
      </div>
      <button type="button" onClick={() => takeService(service)}>
        Stop there
        <span class="unseen">
          : {name}, by {distanceIn(units, nearM)}
        </span>
      </button>
    </li>
  );
}
