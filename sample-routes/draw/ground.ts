import { apartM, type Point } from '../../geo/earth/point.ts';
import { pointAt } from './lines/curve.ts';
import { type Line, type LineKind, lineLength } from './lines/line.ts';
import type { Sheet } from './sheet.ts';

interface Mark extends Point {
  readonly line: Line | undefined;
  /** half the breadth taken up here. Metres */
  readonly half: number;
}

const CELL_M = 60;
const EVERY_M = 6;

/** What lies where, for those who look for free ground. */
export class Ground {
  private readonly cells = new Map<string, Mark[]>();
  private readonly seen = new Set<Line>();
  private readonly sheet: Sheet;

  constructor(sheet: Sheet) {
    this.sheet = sheet;
  }

  /** Metres from a point to the nearest edge of anything of these kinds; `reach` where there is none nearer. */
  clearance(p: Point, reach: number, kinds?: readonly LineKind[], except?: readonly Line[]): number {
    this.refresh();
    let best = reach;
    const span = Math.ceil((reach + 12) / CELL_M);
    const cx = Math.floor(p.x / CELL_M);
    const cy = Math.floor(p.y / CELL_M);
    for (let x = cx - span; x <= cx + span; x++)
      for (let y = cy - span; y <= cy + span; y++)
        for (const mark of this.cells.get(`${x},${y}`) ?? []) {
          if (
            mark.line === undefined
              ? kinds !== undefined
              : kinds !== undefined && !kinds.includes(mark.line.kind)
          )
            continue;
          if (mark.line !== undefined && except?.includes(mark.line)) continue;
          best = Math.min(best, apartM(p, mark) - mark.half);
        }
    return best;
  }

  /** Takes up a round piece of ground: a house. */
  take(at: Point, half: number): void {
    this.put({ x: at.x, y: at.y, line: undefined, half });
  }

  private refresh(): void {
    for (const line of this.sheet.lines) {
      if (this.seen.has(line)) continue;
      this.seen.add(line);
      const length = lineLength(line);
      for (let s = 0; s <= length; s += EVERY_M)
        this.put({ ...pointAt(line.pts, s).at, line, half: halfOf(line) });
    }
  }

  private put(mark: Mark): void {
    const key = `${Math.floor(mark.x / CELL_M)},${Math.floor(mark.y / CELL_M)}`;
    const cell = this.cells.get(key);
    if (cell === undefined) this.cells.set(key, [mark]);
    else cell.push(mark);
  }
}

function halfOf(line: Line): number {
  if (line.kind === 'river') return 10;
  if (line.kind === 'rail') return 6;
  return line.kind === 'road' ? 3 : 1;
}
