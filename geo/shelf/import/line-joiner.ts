import { ByteSets } from './byte-sets.ts';
import type { ByteStore } from './byte-store.ts';
import { IdSorter } from './id-sorter.ts';
import { LineEnds } from './line-ends.ts';
import { LineList } from './line-list.ts';
import { type Located, newLocated, sizeLocated } from './located.ts';
import { WayRecord } from './way-record.ts';

/** A joined line grows to so many positions, so that whoever thins it is done in time. */
const MOST_POSITIONS = 1 << 15;

/** Lines of one kind and tag set joined end to end; one is used over and over. */
export interface JoinedLine {
  /** the lowest id of the ways it is made of */
  id: number;
  /** of WAY_KIND */
  kind: number;
  /** of DRAWN */
  drawn: number;
  readonly located: Located;
  /** of its nodes */
  ids: Float64Array;
  /** its tag set: sets[setFrom … setTo) */
  sets: Uint8Array;
  setFrom: number;
  setTo: number;
}

/** Joins lines that meet end to end and are drawn alike. The same lines in any order give the same. */
export class LineJoiner {
  private readonly record = new WayRecord();
  private readonly sets = new ByteSets();
  private readonly ends = new LineEnds();
  private readonly sorter = new IdSorter();
  private readonly lines = new LineList();
  /** by place in the list, whether a line was given */
  private used = new Uint8Array(1024);
  /** of the line at hand, its pieces: place in the list, or -1 less that where it is turned round */
  private readonly ahead: number[] = [];
  private readonly behind: number[] = [];
  private readonly joined: JoinedLine = {
    id: 0,
    kind: 0,
    drawn: 0,
    located: newLocated(),
    ids: new Float64Array(4096),
    sets: new Uint8Array(0),
    setFrom: 0,
    setTo: 0,
  };

  /** Takes in all lines of a store, records with places, up to `length`; those before are forgotten. */
  read(store: ByteStore, length: number): void {
    const { record, sets, lines } = this;
    sets.clear();
    lines.clear();
    store.at = 0;
    while (store.at < length) {
      record.read(store);
      const set = sets.add(store.bytes, record.tagsFrom, record.tagsTo);
      lines.add(record, store, set * 16 + record.drawn * 4 + record.kind);
    }
  }

  /** Gives each line that came of joining; what is given is good until the next. */
  join(give: (line: JoinedLine) => void): void {
    const { lines, ends, sorter } = this;
    const { count } = lines;
    if (this.used.length < count) this.used = new Uint8Array(count * 2);
    this.used.fill(0, 0, count);
    sorter.sort(lines.id, count);
    ends.clear(count);
    // what is found first at an end is what was noted last
    for (let i = count - 1; i >= 0; i--) {
      const line = sorter.order[i]!;
      ends.note(lines.firstNode(line), lines.alike[line]!, line);
      ends.note(lines.lastNode(line), lines.alike[line]!, line);
    }
    for (let i = 0; i < count; i++) {
      const line = sorter.order[i]!;
      if (this.used[line] === 0) give(this.joinFrom(line));
    }
  }

  private joinFrom(line: number): JoinedLine {
    const { lines, ahead, behind } = this;
    this.used[line] = 1;
    ahead.length = 0;
    behind.length = 0;
    ahead.push(line);
    const alike = lines.alike[line]!;
    let most = lines.countOf(line);
    let head = lines.firstNode(line);
    let tail = lines.lastNode(line);
    while (tail !== head && most < MOST_POSITIONS) {
      const next = this.takeAt(tail, alike);
      if (next < 0) break;
      const turned = lines.firstNode(next) !== tail;
      ahead.push(turned ? -1 - next : next);
      most += lines.countOf(next);
      tail = turned ? lines.firstNode(next) : lines.lastNode(next);
    }
    while (tail !== head && most < MOST_POSITIONS) {
      const next = this.takeAt(head, alike);
      if (next < 0) break;
      const turned = lines.lastNode(next) !== head;
      behind.push(turned ? -1 - next : next);
      most += lines.countOf(next);
      head = turned ? lines.lastNode(next) : lines.firstNode(next);
    }
    this.bring(most);
    const { joined, sets } = this;
    // lines are gone through by id: of those joined it is the lowest
    joined.id = lines.id[line]!;
    joined.kind = alike & 3;
    joined.drawn = (alike >> 2) & 3;
    joined.sets = sets.store.bytes;
    joined.setFrom = sets.start[alike >> 4]!;
    joined.setTo = sets.start[(alike >> 4) + 1]!;
    return joined;
  }

  /** A line not used yet that begins or ends at a node; -1 without. */
  private takeAt(node: number, alike: number): number {
    const { ends, used } = this;
    for (let at = ends.first(node, alike); at >= 0; at = ends.next(at)) {
      const line = ends.lineAt(at);
      if (used[line] === 1) continue;
      used[line] = 1;
      return line;
    }
    return -1;
  }

  /** The positions of all pieces one behind the other, the node that two share once. */
  private bring(most: number): void {
    const { joined, ahead, behind } = this;
    const { located } = joined;
    sizeLocated(located, most);
    if (joined.ids.length < most) joined.ids = new Float64Array(most * 2);
    let count = 0;
    for (let i = behind.length - 1; i >= 0; i--) count = this.add(behind[i]!, count);
    for (const piece of ahead) count = this.add(piece, count);
    located.count = count;
  }

  private add(piece: number, before: number): number {
    const { lines } = this;
    const { located, ids } = this.joined;
    const line = piece < 0 ? -1 - piece : piece;
    const step = piece < 0 ? -1 : 1;
    const skip = before > 0 ? 1 : 0;
    let at = (piece < 0 ? lines.start[line + 1]! - 1 : lines.start[line]!) + step * skip;
    let count = before;
    for (let left = lines.countOf(line) - skip; left > 0; left--, at += step) {
      ids[count] = lines.node[at]!;
      located.lat[count] = lines.lat[at]!;
      located.lon[count++] = lines.lon[at]!;
    }
    return count;
  }
}
