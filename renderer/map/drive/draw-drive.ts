import { cutSpans } from '../../../geo/drive/cut-spans.ts';
import type { Span } from '../../../geo/drive/drive.ts';
import { rankOf } from '../../../geo/report/level.ts';
import type { Finding } from '../../../geo/report/report.ts';
import type { FollowedDrive } from '../../../main/contract/followed-drive.ts';
import type { MapCanvas } from '../canvas/canvas-layer.ts';
import type { Palette } from '../canvas/palette.ts';
import { drawDirection } from './draw-direction.ts';
import { type DrivePath, linesBetween, linesOf } from './drive-path.ts';
import { type Line, stroke } from './stroke.ts';

interface DrawnDrive {
  readonly drive: FollowedDrive;
  readonly path: DrivePath;
  readonly findings: readonly Finding[];
  readonly selectedId: string | undefined;
  /** what a way round would leave out */
  readonly leftOut: readonly Span[];
}

export const LINE_PX = 5.5;
const HALO_PX = 9;
/** A finding's colour lies within the line, so that the drive stays one line. */
const SPAN_PX = 3.4;

/** Draws the drive in order: off the map dashed, gaps dotted, guessed spans hatched, findings in their colours, direction on top. */
export function drawDrive(canvas: MapCanvas, drawn: DrawnDrive, palette: Palette): void {
  canvas.ctx.lineJoin = 'round';
  drawWay(canvas, drawn, palette);
  drawSpans(canvas, drawn, palette);
  drawLeftOut(canvas, drawn, palette);
  drawDirection(canvas, drawn.path, palette);
}

function drawWay(canvas: MapCanvas, { path, drive }: DrawnDrive, palette: Palette): void {
  const halo = { colour: palette['paper-raised'], width: HALO_PX };
  const roads = linesOf(path, 'stretch');
  stroke(canvas, roads, halo);
  stroke(canvas, roads, { colour: palette.drive, width: LINE_PX });
  const guess = { colour: palette['paper-raised'], width: LINE_PX - 1.4, dash: [2.5, 4] };
  for (const { fromM, toM } of drive.guessed) {
    const lines = linesBetween(path, fromM, toM);
    stroke(canvas, lines, { colour: palette.unknown, width: LINE_PX - 1.4 });
    stroke(canvas, lines, guess);
  }
  const offMap = linesOf(path, 'offMap');
  stroke(canvas, offMap, halo);
  stroke(canvas, offMap, { colour: palette.drive, width: LINE_PX - 1, dash: [10, 7] });
  stroke(canvas, linesOf(path, 'gap'), { colour: palette.drive, width: 2.5, dash: [0.1, 7], cap: 'round' });
}

/** Grey, with its findings still to be made out under it by their marks. */
function drawLeftOut(canvas: MapCanvas, { path, leftOut }: DrawnDrive, palette: Palette): void {
  const lines = leftOut.flatMap(({ fromM, toM }) => linesBetween(path, fromM, toM));
  stroke(canvas, lines, { colour: palette['paper-raised'], width: HALO_PX });
  stroke(canvas, lines, { colour: palette['ink-faint'], width: LINE_PX - 2 });
}

function drawSpans(
  canvas: MapCanvas,
  { path, drive, findings, selectedId }: DrawnDrive,
  palette: Palette,
): void {
  // what is guessed has its own hatching
  const plain = findings.filter(({ id, kind }) => id !== selectedId && kind !== 'guessed');
  // the gravest last, so that it lies on top
  for (const finding of plain.sort((a, b) => rankOf(b.level) - rankOf(a.level)))
    stroke(canvas, spanLines(path, drive, finding), { colour: palette[finding.level], width: SPAN_PX });
  const chosen = findings.find(({ id }) => id === selectedId);
  if (!chosen) return;
  const lines = spanLines(path, drive, chosen);
  stroke(canvas, lines, { colour: palette.ink, width: HALO_PX + 5 });
  stroke(canvas, lines, { colour: palette['paper-raised'], width: HALO_PX + 2 });
  stroke(canvas, lines, { colour: palette[chosen.level], width: LINE_PX + 2 });
}

/** A finding at one place has no span to colour: its mark alone says it. */
function spanLines(path: DrivePath, drive: FollowedDrive, { kind, fromM, toM }: Finding): Line[] {
  // of many guesses told as one only what is guessed is marked, not what lies between them
  const spans = kind === 'guessed' ? cutSpans(drive.guessed, { fromM, toM }) : [{ fromM, toM }];
  return spans
    .filter((span) => span.toM > span.fromM)
    .flatMap((span) => linesBetween(path, span.fromM, span.toM));
}
