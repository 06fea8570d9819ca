import type { Finding, Subject } from '../../geo/report/report.ts';
import type { Settings } from '../../main/contract/settings.ts';
import { LevelMark } from '../look/level-mark.tsx';
import { select } from '../state/actions.ts';
import { cursorM } from '../state/state.ts';
import { FindingDetail } from './detail.tsx';
import { clockText, distanceText, runText, sumOf } from './figures-in-words.ts';
import { clip, LEVEL_WORD, SUBJECT_WORD } from './words.ts';

export interface RowProps {
  readonly finding: Finding;
  readonly open: boolean;
  readonly units: Settings['units'];
  readonly leaveAt: string | undefined;
}

/** One finding: its level, what it is, where, and the number that decides. Opened, it tells all. */
export function FindingRow({ finding, open, units, leaveAt }: RowProps) {
  const { id, level, subject, fromM, road, passesAt } = finding;
  const detail = `finding-${id}`;
  return (
    <li class={`row${open ? ' row-open' : ''}`}>
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
          <b class={`level-${level}`}>{LEVEL_WORD[level]}</b> {SUBJECT_WORD[subject].toLowerCase()}
        </span>
        <span class="row-where">
          <span>{distanceText(fromM, units)}</span>
          {passesAt !== undefined && <span>, {clockText(passesAt, leaveAt)}</span>}
          {road !== undefined && (
            <>
              {', '}
              <bdi>{clip(road, 60)}</bdi>
            </>
          )}
        </span>
        {!finding.limit && (
          <span class="row-says">
            <bdi>{clip(finding.say, 120)}</bdi>
          </span>
        )}
        <Deciding finding={finding} units={units} />
      </button>
      {open && <FindingDetail id={detail} finding={finding} units={units} leaveAt={leaveAt} />}
    </li>
  );
}

const NEEDS_FIGURE: ReadonlySet<Subject> = new Set(['height', 'width', 'length', 'mass', 'axle']);
/** A finding that reaches less far is a place. Metres. */
const LONG_M = 30;

/** The number that decides, or that there is none. */
function Deciding({ finding, units }: { finding: Finding; units: Settings['units'] }) {
  const sum = sumOf(finding, units);
  if (sum)
    return (
      <span class={`row-number level-${finding.level}`}>
        {sum.short} <span class="small">{sum.over ? 'over' : 'spare'}</span>
      </span>
    );
  if (finding.limit) return <span class="row-number small">{clip(finding.limit.asMapped, 24)}</span>;
  const run = finding.toM - finding.fromM;
  if (run > LONG_M) return <span class="row-number small soft">for {runText(run, units)}</span>;
  return <span class="row-number small soft">{NEEDS_FIGURE.has(finding.subject) ? 'no figure' : ''}</span>;
}
