import { DivIcon, LayerGroup, type Map as LeafletMap, Marker, type Point } from 'leaflet';
import { gravestFirst, LEVELS, rankOf } from '../../../geo/report/level.ts';
import type { Finding } from '../../../geo/report/report.ts';
import { type MarkLook, markElement, markLook } from './mark-element.ts';
import { type Spot, spreadMarks } from './spread-marks.ts';

/** A mark that had to stand aside, for the line that leads to its place; unit-free map pixels of the zoom. */
export interface Leader {
  readonly place: { readonly lat: number; readonly lon: number };
  readonly shown: { readonly lat: number; readonly lng: number };
}

/** A mark where it stands and where it belongs: its middle, in the map's own pixels of this zoom. */
interface PlacedMark extends Spot {
  readonly own: Point;
  readonly look: MarkLook;
  readonly finding: Finding;
}

/** The findings' marks. Rows elsewhere say the same, so these are hidden from a screen reader and take no focus. */
export class MarkLayer {
  readonly group = new LayerGroup();
  leaders: readonly Leader[] = [];
  boxes: readonly PlacedMark[] = [];
  private readonly map: LeafletMap;
  private readonly pane: string;
  private readonly choose: (id: string) => void;
  private findings: readonly Finding[] = [];
  private selectedId: string | undefined;

  constructor(map: LeafletMap, pane: string, choose: (id: string) => void) {
    this.map = map;
    this.pane = pane;
    this.choose = choose;
    this.group.addTo(map);
  }

  show(findings: readonly Finding[], selectedId: string | undefined): void {
    // the gravest chooses its place first
    this.findings = gravestFirst(findings);
    this.selectedId = selectedId;
    this.arrange();
  }

  /** Places the marks for the zoom of now. */
  arrange(): void {
    const { map } = this;
    this.group.clearLayers();
    const wanted = this.findings.map((finding) => this.wantedMark(finding));
    // dots hide little and stand where they belong; plates are moved apart
    const plates = spreadMarks(wanted.filter(({ look }) => look.as === 'plate'));
    const dots = wanted.filter(({ look }) => look.as === 'dot');
    this.boxes = [...plates, ...dots];
    for (const mark of this.boxes) this.group.addLayer(this.marker(mark));
    this.leaders = plates
      .filter(({ x, y, own }) => x !== own.x || y !== own.y)
      .map(({ x, y, finding }) => ({ place: finding.at, shown: map.unproject([x, y]) }));
  }

  private wantedMark(finding: Finding): PlacedMark {
    const own = this.map.project([finding.at.lat, finding.at.lon]);
    const look = markLook(finding.level, {
      zoom: this.map.getZoom(),
      chosen: finding.id === this.selectedId,
    });
    return { x: own.x, y: own.y, size: look.size, own, look, finding };
  }

  private marker({ x, y, look, finding: { id, level } }: PlacedMark): Marker {
    const chosen = id === this.selectedId;
    const element = markElement(look);
    element.dataset['finding'] = id;
    const marker = new Marker(this.map.unproject([x, y]), {
      icon: new DivIcon({
        html: element,
        className: `map-mark${chosen ? ' map-mark-chosen' : ''}`,
        iconSize: [look.size, look.size],
      }),
      keyboard: false,
      pane: this.pane,
      zIndexOffset: chosen ? 10_000 : (LEVELS.length - rankOf(level)) * 100,
    });
    return marker.on('click', () => this.choose(id));
  }
}
