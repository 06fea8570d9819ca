import { useMemo } from 'preact/hooks';
import { clockText } from '../../geo/clock/print-times.ts';
import { cutSpans } from '../../geo/drive/cut-spans.ts';
import type { Span } from '../../geo/drive/drive.ts';
import { placeMarks } from '../../geo/drive/strip/paper/place-marks.ts';
import { halfWidthAt } from '../../geo/drive/strip/paper/road-drawn.ts';
import { MARK_X, type StripScale } from '../../geo/drive/strip/paper/scale.ts';
import { rankOf } from '../../geo/report/level.ts';
import type { DriveReport, Finding } from '../../geo/report/report.ts';
import { LevelShape } from '../look/level-mark.tsx';
import { PENCIL } from '../notes/pencil.tsx';
import { band, cutTo, drawnOf, middleOf, type StripDrawing } from './drawing.ts';

interface Props {
  readonly drawing: StripDrawing;
  readonly findings: readonly Finding[];
  readonly chosen: string | undefined;
  /** under the pointer, here or elsewhere */
  readonly near: string | undefined;
  readonly times: DriveReport['timetable'];
}

const MARK_PX = 18;
/** What bars is drawn larger. */
const BARRED_PX = 22;
/** The ring in pencil about a mark that the firm's own note made or settled. */
const NOTED_PX = 38;
const APART_PX = 26;
/** Farther from its place a mark would be taken for another's: the span on the road and the row stay. */
const AWAY_PX = 70;

/**
 * Each finding at its place: its span on the road, its mark beside it, and when it is passed. The ribbon hears the
 * clicks; rows do the same for the keyboard and for those who do not see it.
 */
export function StripFindings({ drawing, findings, chosen, near, times }: Props) {
  const { scale } = drawing;
  // all of them are placed, that no mark moves when another scrolls into view
  const ys = useMemo(() => markYs(findings, scale, chosen), [findings, scale.heightPx, scale.pxPerM, chosen]);
  return (
    <g>
      <EndClocks drawing={drawing} times={times} marks={[...ys.values()]} />
      {drawnOf(drawing, findings).map((finding) => (
        <StripFinding
          key={finding.id}
          drawing={drawing}
          finding={finding}
          look={finding.id === chosen ? 'chosen' : finding.id === near ? 'near' : 'plain'}
          markY={ys.get(finding.id)}
        />
      ))}
    </g>
  );
}

/** Where the marks stand, by the finding's id; those that found no room are left out. */
function markYs(
  findings: readonly Finding[],
  scale: StripScale,
  chosen: string | undefined,
): ReadonlyMap<string, number> {
  // the chosen one always has a mark, and like every other one at a distance from the rest: their clocks stand beside them
  const marks = findings.map(({ id, fromM, level }) => ({
    y: scale.y(fromM),
    rank: id === chosen ? 0 : rankOf(level),
  }));
  const placed = placeMarks(marks, {
    apartPx: APART_PX,
    awayPx: AWAY_PX,
    highestPx: scale.y(0) - MARK_PX / 2,
  });
  return new Map(
    findings.flatMap(({ id }, i) => {
      const y = placed[i];
      return y === undefined ? [] : [[id, y] as const];
    }),
  );
}

interface EndClocksProps extends Pick<Props, 'drawing' | 'times'> {
  readonly marks: readonly number[];
}

/** When the drive leaves and arrives, at its ends, where no mark stands. */
function EndClocks({ drawing: { strip, scale }, times, marks }: EndClocksProps) {
  const ends = [
    { atM: 0, moment: times?.leaveAt },
    { atM: strip.lengthM, moment: times?.arriveAt },
  ];
  return (
    <>
      {ends
        .map(({ atM, moment }) => ({ atM, moment, y: scale.y(atM) }))
        .filter(({ y }) => marks.every((other) => Math.abs(other - y) > MARK_PX))
        .map(({ atM, moment, y }) => (
          <Clock key={atM} moment={moment} y={y} />
        ))}
    </>
  );
}

function Clock({ moment, y }: { moment: string | undefined; y: number }) {
  return (
    <text class="strip-clock" x={MARK_X + 13} y={y + 4}>
      {moment === undefined ? '' : clockText(moment)}
    </text>
  );
}

interface FindingProps {
  readonly drawing: StripDrawing;
  readonly finding: Finding;
  readonly look: 'plain' | 'near' | 'chosen';
  /** undefined where its mark found no room */
  readonly markY: number | undefined;
}

function StripFinding({ drawing, finding, look, markY: y }: FindingProps) {
  const { strip, scale } = drawing;
  const { id, level, fromM, passesAt, note } = finding;
  const markPx = level === 'barred' ? BARRED_PX : MARK_PX;
  const edge = middleOf(drawing, fromM) + halfWidthAt(strip.pieces, fromM) + 2;
  return (
    <g data-finding={id} class={`strip-finding strip-${look} strip-of-${level}`}>
      {spansOf(drawing, finding).map((span) => (
        <path
          key={span.fromM}
          class={`strip-span-${level}`}
          d={band(drawing, longEnough(cutTo(drawing, span), scale), { left: -2.5, right: 2.5 })}
        />
      ))}
      {level === 'barred' && <BarAcross drawing={drawing} atM={fromM} />}
      {y !== undefined && (
        <>
          <path class="strip-leader" d={`M${edge} ${scale.y(fromM)}L${MARK_X - 12} ${y}`} />
          <g transform={`translate(${MARK_X - markPx / 2} ${y - markPx / 2}) scale(${markPx / 24})`}>
            <rect class="strip-mark-ground" x={-3} y={-3} width={30} height={30} rx={4} />
            <LevelShape level={level} />
          </g>
          {note !== undefined && (
            <g
              class="strip-noted"
              transform={`translate(${MARK_X - NOTED_PX / 2} ${y - NOTED_PX / 2}) scale(${NOTED_PX / 24})`}
            >
              <path class="pencil" d={PENCIL} />
            </g>
          )}
          <Clock moment={passesAt} y={y} />
        </>
      )}
    </g>
  );
}

/** How far the bar stands out over the road's edge, and how thick it is. */
const BAR_OUT_PX = 5;
const BAR_PX = 5;

/** What bars lies across the road, on the near side of the place. */
function BarAcross({ drawing, atM }: { drawing: StripDrawing; atM: number }) {
  const half = halfWidthAt(drawing.strip.pieces, atM) + BAR_OUT_PX;
  const x = middleOf(drawing, atM) - half;
  return (
    <rect
      class="strip-span-barred"
      x={x}
      y={drawing.scale.y(atM) - 3 - BAR_PX}
      width={2 * half}
      height={BAR_PX}
    />
  );
}

/** What a finding covers; of many guesses told as one, what is guessed, not what lies between them. */
function spansOf(drawing: StripDrawing, { kind, fromM, toM }: Finding): readonly Span[] {
  if (kind !== 'guessed') return [{ fromM, toM }];
  return drawnOf(drawing, cutSpans(drawing.strip.guessed, { fromM, toM }));
}

/** A finding at one place, too, shows on the road. */
function longEnough({ fromM, toM }: { fromM: number; toM: number }, scale: StripScale) {
  return { fromM, toM: Math.max(toM, fromM + 4 / scale.pxPerM) };
}
