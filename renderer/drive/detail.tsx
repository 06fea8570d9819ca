import type { Finding } from '../../geo/report/report.ts';
import { select } from '../state/actions.ts';
import { findings, openedMap, shownFindings } from '../state/state.ts';
import { neighboursOf } from '../state/ui.ts';
import { Figure } from './figures/figure.tsx';
import { TurnFigure } from './figures/turn-figure.tsx';
import { clockText, distanceText, sumOf } from './figures-in-words.ts';
import type { RowProps } from './row.tsx';
import { clip, LEVEL_WORD, SUBJECT_WORD } from './words.ts';

/** All there is to say about one finding. */
export function FindingDetail({ id, finding, units, leaveAt }: Omit<RowProps, 'open'> & { id: string }) {
  const { fromM, toM, passesAt, at, road } = finding;
  const [from, to] = [distanceText(fromM, units), distanceText(toM, units)];
  const span = from === to ? from : `${from} to ${to}`;
  return (
    <div id={id} class="detail">
      <p class="detail-say">{clip(finding.say, 1500)}</p>
      <SumWithFigure finding={finding} units={units} />
      {finding.turn && <TurnFigure finding={finding} />}
      {finding.advice !== '' && (
        <p class="detail-advice">
          <b>What to do:</b> {clip(finding.advice, 1000)}
        </p>
      )}
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
      <Neighbours finding={finding} units={units} />
    </div>
  );
}

function SumWithFigure({ finding, units }: Pick<RowProps, 'finding' | 'units'>) {
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
      <Figure finding={finding} units={units} />
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
  // the sample district is on no server
  const invented = openedMap.value?.source.kind === 'sample';
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

/** What comes just before and after: how a place is recognised. */
function Neighbours({ finding, units }: Pick<RowProps, 'finding' | 'units'>) {
  const among = shownFindings.value.length > 1 ? shownFindings.value : findings.value;
  const { before, after } = neighboursOf(finding, among);
  return (
    <div class="neighbours">
      <Neighbour say="Before" to={before} from={finding} units={units} />
      <Neighbour say="After" to={after} from={finding} units={units} />
      <button type="button" onClick={() => openAndFocus(undefined, finding.id)}>
        Close
      </button>
    </div>
  );
}

function Neighbour({
  say,
  to,
  from,
  units,
}: {
  say: string;
  to: Finding | undefined;
  from: Finding;
  units: RowProps['units'];
}) {
  if (!to)
    return (
      <button type="button" disabled>
        {say}: {say === 'Before' ? 'the start' : 'the end'}
      </button>
    );
  const apart = distanceText(Math.abs(to.fromM - from.fromM), units);
  return (
    <button type="button" onClick={() => openAndFocus(to.id, to.id)}>
      {say}: {LEVEL_WORD[to.level].toLowerCase()}, {SUBJECT_WORD[to.subject].toLowerCase()}, {apart}
    </button>
  );
}

/** The focus goes to the row, so that the keyboard never falls out of the list. */
function openAndFocus(open: string | undefined, focus: string): void {
  select(open);
  requestAnimationFrame(() =>
    document.querySelector<HTMLElement>(`button[data-finding="${CSS.escape(focus)}"]`)?.focus(),
  );
}
