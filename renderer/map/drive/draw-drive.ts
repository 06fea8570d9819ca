import type { Finding } from '../../../geo/report/report.ts';
import type { FollowedDrive } from '../../../main/contract/followed-drive.ts';
import type { Taken } from '../labels/place-labels.ts';
import type { Palette } from '../palette.ts';
import type { Sheet } from '../sheet-layer.ts';
import { type DrivePath, linesBetween } from './drive-path.ts';

export interface DrawnDrive {
  readonly followed: FollowedDrive;
  readonly path: DrivePath;
  readonly findings: readonly Finding[];
  readonly selectedId: string | undefined;
}

const LINE_PX = 5.5;
const HALO_PX = 9;
/** A finding's colour lies within the line, so that the drive stays one line. */
const SPAN_PX = 3.4;
/** from one tick of direction to the next */
const TICK_PX = 84;

/** Draws the drive in order: off the map dashed, gaps dotted, guessed spans hatched, findings in their colours, ticks on top. */
export function drawDrive(sheet: Sheet, drive: DrawnDrive, palette: Palette): void {
  const { ctx } = sheet;
  const { path, followed } = drive;
  ctx.lineJoin = 'round';
  const roads = runLines(path, 'stretch');
  stroke(sheet, roads, palette['paper-raised'], HALO_PX);
  stroke(sheet, roads, palette.drive, LINE_PX);
  for (const { fromM, toM } of [...followed.guessed, ...followed.doubtful])
    stroke(sheet, linesBetween(path, fromM, toM), palette['paper-raised'], LINE_PX - 1.4, [2.5, 4]);
  const offMap = runLines(path, 'offMap');
  stroke(sheet, offMap, palette['paper-raised'], HALO_PX);
  stroke(sheet, offMap, palette.drive, LINE_PX - 1, [10, 7]);
  stroke(sheet, runLines(path, 'gap'), palette.drive, 2.5, [0.1, 7], 'round');
  const plain = drive.findings.filter(({ id }) => id !== drive.selectedId);
  // the gravest last, so that it lies on top
  for (const level of ['care', 'unknown', 'tight', 'barred'] as const)
    for (const finding of plain)
      if (finding.level === level) stroke(sheet, spanLines(path, finding), palette[level], SPAN_PX);
  const chosen = drive.findings.find(({ id }) => id === drive.selectedId);
  if (chosen) {
    const lines = spanLines(path, chosen);
    stroke(sheet, lines, palette.ink, HALO_PX + 5);
    stroke(sheet, lines, palette['paper-raised'], HALO_PX + 2);
    stroke(sheet, lines, palette[chosen.level], LINE_PX + 2);
  }
  drawTicks(sheet, path, palette);
}

/** What the line covers, as small boxes along it, for texts to keep clear of. */
export function coveredByDrive(sheet: Sheet, path: DrivePath): Taken[] {
  const { world, offsetX, offsetY, width, height } = sheet;
  const taken: Taken[] = [];
  for (const run of path.runs) {
    if (run.kind === 'gap') continue;
    let lastX = Number.NaN;
    let lastY = Number.NaN;
    for (let i = run.from; i <= run.to; i++) {
      const x = path.x[i]! * world + offsetX;
      const y = path.y[i]! * world + offsetY;
      const far = Math.hypot(x - lastX, y - lastY);
      if (far < COVER_PX) continue;
      const onSheet =
        Math.max(x, lastX) > 0 &&
        Math.min(x, lastX) < width &&
        Math.max(y, lastY) > 0 &&
        Math.min(y, lastY) < height;
      const count = Number.isNaN(far) || !onSheet ? 1 : Math.ceil(far / COVER_PX);
      for (let k = 1; k <= count; k++) {
        const t = k / count;
        taken.push({
          x: Number.isNaN(lastX) ? x : lastX + (x - lastX) * t,
          y: Number.isNaN(lastY) ? y : lastY + (y - lastY) * t,
          halfWidth: LINE_PX / 2,
          halfHeight: LINE_PX / 2,
        });
      }
      lastX = x;
      lastY = y;
    }
  }
  return taken;
}

const COVER_PX = 7;

/** A finding at one place has no span to colour: its mark alone says it. */
function spanLines(path: DrivePath, { fromM, toM }: Finding): number[][] {
  return toM > fromM ? linesBetween(path, fromM, toM) : [];
}

function runLines({ x, y, runs }: DrivePath, kind: DrivePath['runs'][number]['kind']): number[][] {
  return runs
    .filter((run) => run.kind === kind)
    .map(({ from, to }) => {
      const line: number[] = [];
      for (let i = from; i <= to; i++) line.push(x[i]!, y[i]!);
      return line;
    });
}

function stroke(
  sheet: Sheet,
  lines: readonly (readonly number[])[],
  colour: string,
  width: number,
  dash: number[] = [],
  cap: CanvasLineCap = dash.length > 0 ? 'butt' : 'round',
): void {
  const { ctx } = sheet;
  ctx.beginPath();
  for (const line of lines) trace(sheet, line);
  ctx.strokeStyle = colour;
  ctx.lineWidth = width;
  ctx.lineCap = cap;
  ctx.setLineDash(dash);
  ctx.stroke();
  ctx.setLineDash([]);
}

/** Positions closer than a pixel to the one before, and segments far off the sheet, are left out. */
function trace({ ctx, world, offsetX, offsetY, width, height }: Sheet, line: readonly number[]): void {
  let lastX = Number.NaN;
  let lastY = Number.NaN;
  let wasOut = 0;
  for (let i = 0; i < line.length; i += 2) {
    const px = line[i]! * world + offsetX;
    const py = line[i + 1]! * world + offsetY;
    const isEnd = i + 2 >= line.length;
    if (!isEnd && Math.abs(px - lastX) < 1 && Math.abs(py - lastY) < 1) continue;
    const out =
      (px < -50 ? 1 : 0) | (px > width + 50 ? 2 : 0) | (py < -50 ? 4 : 0) | (py > height + 50 ? 8 : 0);
    // both ends beyond one edge: nothing of the segment is on the sheet
    if (Number.isNaN(lastX) || (out & wasOut) !== 0) ctx.moveTo(px, py);
    else ctx.lineTo(px, py);
    lastX = px;
    lastY = py;
    wasOut = out;
  }
}

/** Arrow heads along the line at even distances, the way it is driven: wider than it, so that they are seen from afar. */
function drawTicks(sheet: Sheet, path: DrivePath, palette: Palette): void {
  const { ctx, world, offsetX, offsetY, width, height } = sheet;
  ctx.beginPath();
  for (const run of path.runs) {
    if (run.kind === 'gap') continue;
    let walked = TICK_PX / 2;
    for (let i = run.from + 1; i <= run.to; i++) {
      const ax = path.x[i - 1]! * world + offsetX;
      const ay = path.y[i - 1]! * world + offsetY;
      const dx = path.x[i]! * world + offsetX - ax;
      const dy = path.y[i]! * world + offsetY - ay;
      const length = Math.hypot(dx, dy);
      if (length === 0) continue;
      let at = TICK_PX - walked;
      walked += length;
      if (walked < TICK_PX) continue;
      walked %= TICK_PX;
      const ux = dx / length;
      const uy = dy / length;
      // a long segment off the sheet has no ticks to draw
      if (Math.max(ax, ax + dx) < 0 || Math.min(ax, ax + dx) > width) continue;
      if (Math.max(ay, ay + dy) < 0 || Math.min(ay, ay + dy) > height) continue;
      for (; at <= length; at += TICK_PX) {
        const x = ax + ux * at;
        const y = ay + uy * at;
        if (x < 0 || x > width || y < 0 || y > height) continue;
        ctx.moveTo(x + ux * 8, y + uy * 8);
        ctx.lineTo(x - ux * 5 - uy * 6.5, y - uy * 5 + ux * 6.5);
        ctx.lineTo(x - ux * 2, y - uy * 2);
        ctx.lineTo(x - ux * 5 + uy * 6.5, y - uy * 5 - ux * 6.5);
        ctx.closePath();
      }
    }
  }
  ctx.strokeStyle = palette['paper-raised'];
  ctx.lineWidth = 3;
  ctx.stroke();
  ctx.fillStyle = palette.drive;
  ctx.fill();
}
