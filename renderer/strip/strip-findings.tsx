import { useMemo } from 'preact/hooks';
import type { Strip } from '../../geo/drive/strip/strip.ts';
import { LEVELS } from '../../geo/report/level.ts';
import type { DriveReport, Finding } from '../../geo/report/report.ts';
import { LevelShape } from '../look/level-mark.tsx';
import { band } from './ribbon.tsx';
import { halfWidthPx, MARK_X, middleAt, pieceAt, placeMarks, type StripScale } from './scale.ts';

interface Props {
  readonly strip: Strip;
  readonly scale: StripScale;
  readonly findings: readonly Finding[];
  readonly chosen: string | undefined;
  readonly times: DriveReport['timetable'];
  readonly fromM: number;
  readonly toM: number;
}

const MARK_PX = 18;
/** Farther from its place a mark would be taken for another's: the span on the road and the row stay. */
const AWAY_PX = 70;
const CLOCK = /T(\d\d:\d\d)/;

/**
 * Each finding at its place: its span on the road, its mark beside it, and when it is passed. The ribbon hears the
 * clicks; rows do the same for the keyboard and for those who do not see it.
 */
export function StripFindings({
  strip,
  scale,
  findings,
  chosen,
  times,
  fromM: drawnFromM,
  toM: drawnToM,
}: Props) {
  // all of them are placed, that no mark moves when another scrolls into view
  const ys = useMemo(
    () =>
      placeMarks(
        findings.map(({ fromM, level }) => ({ y: scale.y(fromM), rank: LEVELS.indexOf(level) })),
        MARK_PX + 4,
        AWAY_PX,
        scale.y(0) + MARK_PX / 2,
      ),
    [findings, scale.heightPx, scale.pxPerM],
  );
  const middle = (atM: number) => middleAt(strip.lean, strip.leanStepM, atM);
  return (
    <g>
      {ends(strip, times).map(([atM, clock]) => {
        const y = scale.y(atM);
        const free = ys.every((other) => other === undefined || Math.abs(other - y) > MARK_PX);
        return (
          free && (
            <text key={atM} class="strip-clock" x={MARK_X + 13} y={y + 4}>
              {clock}
            </text>
          )
        );
      })}
      {findings.map(({ id, level, fromM, toM, passesAt }, i) => {
        if (toM < drawnFromM || fromM > drawnToM) return undefined;
        const y = ys[i] ?? (id === chosen ? scale.y(fromM) : undefined);
        const x = middle(fromM);
        const widthM = pieceAt(strip.pieces, fromM)?.widthM ?? 5;
        return (
          <g
            key={id}
            data-finding={id}
            class={id === chosen ? 'strip-finding strip-chosen' : 'strip-finding'}
          >
            <path
              class={`strip-span-${level}`}
              d={band(
                scale,
                middle,
                strip.leanStepM,
                atLeast(Math.max(fromM, drawnFromM), Math.min(toM, drawnToM), scale),
                -2.5,
                2.5,
              )}
            />
            {y !== undefined && (
              <>
                <path
                  class="strip-leader"
                  d={`M${x + halfWidthPx(widthM) + 2} ${scale.y(fromM)}L${MARK_X - 12} ${y}`}
                />
                <g transform={`translate(${MARK_X - MARK_PX / 2} ${y - MARK_PX / 2}) scale(${MARK_PX / 24})`}>
                  <rect class="strip-mark-ground" x={-3} y={-3} width={30} height={30} rx={4} />
                  <LevelShape level={level} />
                </g>
                <text class="strip-clock" x={MARK_X + 13} y={y + 4}>
                  {clockOf(passesAt)}
                </text>
              </>
            )}
          </g>
        );
      })}
    </g>
  );
}

function clockOf(moment: string | undefined): string {
  return CLOCK.exec(moment ?? '')?.[1] ?? '';
}

/** When the drive leaves and arrives, at its ends. */
function ends({ lengthM }: Strip, times: DriveReport['timetable']): (readonly [number, string])[] {
  return [
    [0, clockOf(times?.leaveAt)],
    [lengthM, clockOf(times?.arriveAt)],
  ];
}

/** A finding at one place, too, shows on the road. */
function atLeast(fromM: number, toM: number, scale: StripScale): { fromM: number; toM: number } {
  return { fromM, toM: Math.max(toM, fromM + 4 / scale.pxPerM) };
}
