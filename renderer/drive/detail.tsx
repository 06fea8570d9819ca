import { clockText } from '../../geo/clock/print-times.ts';
import { sumOf } from '../../geo/report/deciding.ts';
import type { Finding } from '../../geo/report/report.ts';
import { distanceIn, type Units } from '../../geo/units/in-units.ts';
import { clip } from '../../geo/units/text.ts';
import { later } from '../look/later.tsx';
import { NoteButton } from '../notes/note-button.tsx';
import { mapIsInvented } from '../state/opened.ts';
import { WaysPast } from '../ways/ways-past.tsx';
import { Figure } from './figures/figure.tsx';
import { Neighbours } from './neighbours.tsx';

const TurnFigure = later(async () => (await import('./figures/turn-figure.tsx')).TurnFigure);

interface Props {
  /** the element's, for the row that opens it */
  readonly id: string;
  readonly finding: Finding;
  readonly units: Units;
  readonly leaveAt: string | undefined;
}

/** All there is to say about one finding. */
export function FindingDetail({ id, finding, units, leaveAt }: Props) {
  return (
    <div id={id} class="detail">
      <p class="detail-say">{clip(finding.say, 1500)}</p>
      <WaysPast finding={finding} />
      <SumWithFigure finding={finding} units={units} />
      {finding.turn && <TurnFigure finding={finding} />}
      {finding.advice !== '' && (
        <p class="detail-advice">
          <b>What to do:</b> {clip(finding.advice, 1000)}
        </p>
      )}
      <NoteButton finding={finding} />
      <Facts finding={finding} units={units} leaveAt={leaveAt} />
      <Neighbours finding={finding} units={units} />
    </div>
  );
}

function Facts({ finding, units, leaveAt }: Omit<Props, 'id'>) {
  const { fromM, toM, passesAt, at, road } = finding;
  const [from, to] = [distanceIn(units, fromM), distanceIn(units, toM)];
  const span = from === to ? from : `${from} to ${to}`;
  return (
    <dl class="facts small">
      <dt>Where</dt>
      <dd>
        {span} along{road !== undefined && ', '}
        {road !== undefined && <bdi>{clip(road, 200)}</bdi>}; {at.lat.toFixed(5)}, {at.lon.toFixed(5)}
      </dd>
      <dt>When</dt>
      <dd>
        {passesAt !== undefined
          ? `passed at ${clockText(passesAt, leaveAt)}, local time`
          : 'no leave time is set'}
      </dd>
      <dt>As mapped</dt>
      <dd>
        <Tags tags={finding.tags} />
      </dd>
      <dt>Map object</dt>
      <dd>
        <Objects osm={finding.osm} />
      </dd>
    </dl>
  );
}

function SumWithFigure({ finding, units }: Pick<Props, 'finding' | 'units'>) {
  const sum = sumOf(finding, units);
  if (!sum) return null;
  return (
    <div class="sum">
      <p class={`decides level-${finding.level}`}>
        <span class="decides-number">{sum.short}</span> {sum.over ? 'over' : 'spare'}
      </p>
      <p class="sum-line">
        <span>
          limit <b>{sum.limit}</b>
        </span>{' '}
        −{' '}
        <span>
          vehicle <b>{sum.vehicle}</b>
        </span>{' '}
        ={' '}
        <span>
          <b>{sum.spare}</b>
        </span>
      </p>
      <p class="small soft">The vehicle’s figure: {sum.what}.</p>
      <Figure finding={finding} sum={sum} />
    </div>
  );
}

function Tags({ tags }: { tags: Finding['tags'] }) {
  const entries = Object.entries(tags);
  if (entries.length === 0) return <>nothing</>;
  return (
    <ul class="tags mono">
      {entries.map(([key, value]) => (
        <li key={key}>
          <bdi>
            {clip(key, 80)}={clip(value, 400)}
          </bdi>
        </li>
      ))}
    </ul>
  );
}

const OBJECTS_SHOWN = 4;

function Objects({ osm }: { osm: Finding['osm'] }) {
  const invented = mapIsInvented.value;
  if (osm.length === 0) return <>none</>;
  return (
    <>
      {osm.slice(0, OBJECTS_SHOWN).map(({ type, id }, i) => (
        <span key={`${type}${id}`}>
          {i > 0 && ', '}
          {invented ? (
            `${type} ${id}`
          ) : (
            <a href={`https://www.openstreetmap.org/${type}/${id}`} rel="noopener noreferrer" target="_blank">
              {type} {id} on openstreetmap.org
            </a>
          )}
        </span>
      ))}
      {osm.length > OBJECTS_SHOWN && ` and ${osm.length - OBJECTS_SHOWN} more`}
      {invented && ' (invented, like the whole district)'}
    </>
  );
}
