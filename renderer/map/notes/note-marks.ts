import { DivIcon, LayerGroup, type Map as LeafletMap, Marker } from 'leaflet';
import { clip } from '../../../geo/units/text.ts';
import type { KeptNote } from '../../../main/contract/note-calls.ts';
import { PENCIL } from '../../notes/pencil.tsx';

/** The firm's notes as rings in pencil. The list of notes says and does the same for the keyboard. */
export class NoteMarks {
  private readonly group = new LayerGroup();
  private readonly pane: string;
  private readonly open: (id: string) => void;

  constructor(map: LeafletMap, pane: string, open: (id: string) => void) {
    this.pane = pane;
    this.open = open;
    this.group.addTo(map);
  }

  show(notes: readonly KeptNote[]): void {
    this.group.clearLayers();
    for (const note of notes) this.group.addLayer(this.mark(note));
  }

  private mark({ id, fields: { at, say } }: KeptNote): Marker {
    const icon = new DivIcon({
      html: `<svg viewBox="0 0 24 24" class="pencil"><path d="${PENCIL}"/></svg>`,
      className: 'map-note',
      iconSize: [SIDE_PX, SIDE_PX],
    });
    return new Marker([at.lat, at.lon], { icon, keyboard: false, pane: this.pane, zIndexOffset: -1000 })
      .bindTooltip(textOf(say), { direction: 'top', className: 'mark-names', opacity: 1 })
      .on('click', () => this.open(id));
  }
}

/** Round the mark of a finding there, and by itself large enough to take hold of. */
const SIDE_PX = 64;

function textOf(say: string): HTMLElement {
  const text = document.createElement('div');
  text.textContent = clip(say, 80);
  return text;
}
