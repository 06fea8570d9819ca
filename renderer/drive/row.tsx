import { clockText } from '../../geo/clock/print-times.ts';
import { decidingOf } from '../../geo/report/deciding.ts';
import { LEVEL_WORD } from '../../geo/report/level.ts';
import { namePlaceInLine, nameSubject } from '../../geo/report/name-place.ts';
import type { Finding } from '../../geo/report/report.ts';
import { distanceIn, lengthIn, type Units } from '../../geo/units/in-units.ts';
import { clip } from '../../geo/units/text.ts';
import { select } from '../actions/choose.ts';
import { LevelMark } from '../look/level-mark.tsx';
import { PencilMark } from '../notes/pencil.tsx';
import { cursorM, hoveredId } from '../state/shown.ts';
import { WayRoundOfRow } from '../ways/ways-past.tsx';
import { FindingDetail } from './detail.tsx';

interface Props {
  readonly finding: Finding;
  readonly open: boolean;
  readonly units: Units;
  readonly leaveAt: string | undefined;
}

/** One finding: its level, what it is, where, and the number that decides. Opened, it tells all. */
export function FindingRow({ finding, open, units, leaveAt }: Props) {
  const { id, level, fromM, road, passesAt } = finding;
  const detail = `finding-${id}`;
  return (
    <li
      class={`row row-${level}${open ? ' row-open' : ''}${hoveredId.value === id ? ' row-near' : ''}`}
      onPointerEnter={() => {
        hoveredId.value = id;
      }}
      onPointerLeave={() => {
        hoveredId.value = undefined;
      }}
    >
      <button
        type="button"
        class="row-head"
        data-finding={id}
        aria-expanded={open}
        aria-controls={open ? detail : undefined}
        onClick={() => select(open ? undefined : id)}
        onFocus={() => {
          cursorM.value = fromM;
        }}
      >
        <LevelMark level={level} size={20} />
        <span class="row-what">
          <b class={`level-${level}`}>{LEVEL_WORD[level]}</b> {nameSubject(finding)}
          {finding.note !== undefined && (
            <>
              {' '}
              <PencilMark />
              <span class="unseen">, by the firm’s own note</span>
            </>
          )}
        </span>
        <span class="row-where">
          <span>{distanceIn(units, fromM)}</span>
          {passesAt !== undefined && <span>, {clockText(passesAt, leaveAt)}</span>}
          {road !== undefined && (
            <>
              {', '}
              <bdi>{clip(road, 60)}</bdi>
            </>
          )}
        </span>
        {!open && (
          <span class={finding.limit ? 'row-says on-paper' : 'row-says'}>
            <bdi>{clip(finding.say, 1000)}</bdi> <b class="on-paper">{clip(finding.advice, 1000)}</b>
          </span>
        )}
        <Decides finding={finding} units={units} />
      </button>
      {!open && level === 'barred' && <WayRoundOfRow id={id} name={namePlaceInLine(finding, units)} />}
      {open && <FindingDetail id={detail} finding={finding} units={units} leaveAt={leaveAt} />}
    </li>
  );
}

/** The number that decides, or that there is none. */
function Decides({ finding, units }: Pick<Props, 'finding' | 'units'>) {
  const decides = decidingOf(finding, units);
  switch (decides.kind) {
    case 'sum':
      return (
        <span class={`row-number level-${finding.level}`}>
          {decides.sum.short} <span class="small">{decides.sum.over ? 'over' : 'spare'}</span>
        </span>
      );
    case 'text':
      return <span class="row-number small">{clip(decides.text, 24)}</span>;
    case 'reach':
      return <span class="row-number small soft">for {lengthIn(units, decides.lengthM)}</span>;
    case 'no figure':
      return <span class="row-number small soft">no figure</span>;
    case 'place':
      return <span class="row-number small soft" />;
  }
}
