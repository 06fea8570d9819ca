import { DivIcon, LatLngBounds, LayerGroup, type Map as LeafletMap, Marker, Tooltip } from 'leaflet';
import { gravestFirst, LEVELS, rankOf } from '../../../geo/report/level.ts';
import { namePlaceInLine } from '../../../geo/report/name-place.ts';
import type { Finding } from '../../../geo/report/report.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import type { Taken } from '../labels/place-labels.ts';
import { type Group, groupMarks } from './group-marks.ts';
import { type MarkLook, markElement, markLook, targetPx } from './mark-element.ts';

/** A finding's mark: its middle in the map's own pixels of this zoom. */
interface PlacedMark {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly alone: boolean;
  readonly look: MarkLook;
  readonly finding: Finding;
}

interface MarkEvents {
  choose(id: string): void;
  hover(id: string | undefined): void;
}

/** What the marks show. */
interface Marked {
  readonly findings: readonly Finding[];
  readonly selectedId: string | undefined;
  readonly units: Units;
}

/** Findings farther apart than this on the screen are two places. */
const SAME_PLACE_PX = 6;
/** So many are named by a mark that stands for more. */
const NAMED = 4;

/**
 * The findings' marks, gathered where they would hide each other. Rows elsewhere say the same, so these are hidden from
 * a screen reader and take no focus.
 */
export class MarkLayer {
  /** the first mark of each group */
  private boxes: readonly PlacedMark[] = [];
  private readonly group = new LayerGroup();
  private readonly map: LeafletMap;
  private readonly pane: string;
  private readonly events: MarkEvents;
  private marked: Marked = { findings: [], selectedId: undefined, units: 'metric' };
  private elements = new Map<string, HTMLElement>();

  constructor(map: LeafletMap, pane: string, events: MarkEvents) {
    this.map = map;
    this.pane = pane;
    this.events = events;
    this.group.addTo(map);
  }

  show(marked: Marked): void {
    // the gravest leads its group
    this.marked = { ...marked, findings: gravestFirst(marked.findings) };
    this.arrange();
  }

  /** Makes the mark of a finding stand out, and no other. */
  showNear(id: string | undefined): void {
    const near = id === undefined ? undefined : this.elements.get(id);
    for (const element of new Set(this.elements.values()))
      element.classList.toggle('mark-near', element === near);
  }

  /** Places the marks for the zoom of now. */
  arrange(): void {
    this.group.clearLayers();
    this.elements = new Map();
    const groups = groupMarks(this.marked.findings.map((finding) => this.wantedMark(finding)));
    this.boxes = groups.map(([first]) => first);
    for (const group of groups) this.group.addLayer(this.marker(group));
  }

  /** What the marks cover, for texts and numbers to keep clear of. @param offset from the map's own pixels */
  taken(offset: { readonly offsetX: number; readonly offsetY: number }): Taken[] {
    return this.boxes.map(({ x, y, look: { size } }) => ({
      x: x + offset.offsetX,
      y: y + offset.offsetY,
      halfWidth: size / 2,
      halfHeight: size / 2,
    }));
  }

  private wantedMark(finding: Finding): PlacedMark {
    const { x, y } = this.map.project([finding.at.lat, finding.at.lon]);
    const chosen = finding.id === this.marked.selectedId;
    const look = markLook(finding.level, { zoom: this.map.getZoom(), chosen });
    return { x, y, size: look.size, alone: chosen, look, finding };
  }

  private marker(group: Group<PlacedMark>): Marker {
    const [{ look, finding, alone: chosen }] = group;
    const element = markElement(look, group.length);
    element.dataset['finding'] = finding.id;
    element.dataset['count'] = String(group.length);
    for (const { finding: each } of group) this.elements.set(each.id, element);
    const side = targetPx(look);
    const marker = new Marker([finding.at.lat, finding.at.lon], {
      icon: new DivIcon({
        html: element,
        className: `map-mark${chosen ? ' map-mark-chosen' : ''}`,
        iconSize: [side, side],
      }),
      keyboard: false,
      pane: this.pane,
      zIndexOffset: chosen ? 10_000 : (LEVELS.length - rankOf(finding.level)) * 1000,
    });
    const tooltip = new Tooltip({
      direction: 'top',
      offset: [0, -side / 2],
      className: 'mark-names',
      opacity: 1,
    });
    return marker
      .bindTooltip(tooltip.setContent(() => this.names(group)))
      .on('click', () => this.pick(group))
      .on('mouseover', () => this.events.hover(finding.id))
      .on('mouseout', () => this.events.hover(undefined));
  }

  private names(group: Group<PlacedMark>): HTMLElement {
    const box = document.createElement('div');
    const line = (text: string) => {
      const row = document.createElement('div');
      row.textContent = text;
      box.append(row);
    };
    for (const { finding } of group.slice(0, NAMED)) line(namePlaceInLine(finding, this.marked.units));
    if (group.length > NAMED) line(`and ${group.length - NAMED} more`);
    return box;
  }

  /** One is opened; several are looked at from nearer, and where that does not part them, opened one after the other. */
  private pick(group: Group<PlacedMark>): void {
    const { map } = this;
    const bounds = new LatLngBounds(group.map(({ finding: { at } }) => [at.lat, at.lon]));
    const nearer = map.getBoundsZoom(bounds.pad(0.3));
    if (group.length > 1 && nearer > map.getZoom() && !this.isOnePlace(group)) {
      map.fitBounds(bounds.pad(0.3), { animate: false });
      return;
    }
    this.events.choose(this.nextHere(group[0].finding).id);
  }

  private isOnePlace(group: Group<PlacedMark>): boolean {
    const closest = this.map.getMaxZoom();
    const at = group.map(({ finding }) => this.map.project([finding.at.lat, finding.at.lon], closest));
    return at.every((each) => each.distanceTo(at[0]!) < SAME_PLACE_PX);
  }

  /** Of the findings at one place the next after the one that is open; the first where none of them is. */
  private nextHere({ at }: Finding): Finding {
    const { findings, selectedId } = this.marked;
    const here = this.map.project([at.lat, at.lon]);
    const there = findings.filter(
      (each) => this.map.project([each.at.lat, each.at.lon]).distanceTo(here) < SAME_PLACE_PX,
    );
    const open = there.findIndex(({ id }) => id === selectedId);
    return there[(open + 1) % there.length]!;
  }
}
