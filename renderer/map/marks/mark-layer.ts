import { DivIcon, LayerGroup, type Map as LeafletMap, Marker, type Point } from 'leaflet';
import { gravestFirst, LEVELS, rankOf } from '../../../geo/report/level.ts';
import type { Finding } from '../../../geo/report/report.ts';
import { MARK_PX, markElement } from './mark-element.ts';
import { spreadMarks } from './spread-marks.ts';

/** A mark that had to stand aside, for the line that leads to its place; unit-free map pixels of the zoom. */
export interface Leader {
  readonly place: { readonly lat: number; readonly lon: number };
  readonly shown: { readonly lat: number; readonly lng: number };
}

/** The findings' marks. Rows elsewhere say the same, so these are hidden from a screen reader and take no focus. */
export class MarkLayer {
  readonly group = new LayerGroup();
  leaders: readonly Leader[] = [];
  /** middles of the marks, in the map's own pixels of this zoom */
  boxes: readonly Point[] = [];
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
    const spots = this.findings.map(({ at }) => map.project([at.lat, at.lon]));
    const spread = spreadMarks(spots, MARK_PX);
    const leaders: Leader[] = [];
    this.findings.forEach((finding, i) => {
      const spot = spots[i];
      const place = spread[i];
      if (!spot || !place) return;
      const shown = map.unproject([place.x, place.y]);
      if (place.x !== spot.x || place.y !== spot.y) leaders.push({ place: finding.at, shown });
      const chosen = finding.id === this.selectedId;
      const element = markElement(finding.level);
      element.dataset['finding'] = finding.id;
      const marker = new Marker(shown, {
        icon: new DivIcon({
          html: element,
          className: `map-mark${chosen ? ' map-mark-chosen' : ''}`,
          iconSize: [MARK_PX, MARK_PX],
        }),
        keyboard: false,
        pane: this.pane,
        zIndexOffset: chosen ? 10_000 : (LEVELS.length - rankOf(finding.level)) * 100,
      });
      marker.on('click', () => this.choose(finding.id));
      this.group.addLayer(marker);
    });
    this.leaders = leaders;
    this.boxes = spread.map(({ x, y }) => map.project(map.unproject([x, y])));
  }
}
