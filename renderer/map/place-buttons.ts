import { Control, DomEvent } from 'leaflet';

/** Two ways back to what matters: the drive as a whole, and the place that is looked at. */
export class PlaceButtons extends Control {
  private readonly acts: { wholeDrive(): void; thisPlace(): void };

  constructor(acts: { wholeDrive(): void; thisPlace(): void }) {
    super({ position: 'topright' });
    this.acts = acts;
  }

  override onAdd(): HTMLElement {
    const box = document.createElement('div');
    box.className = 'map-places';
    box.append(
      button('Whole drive', () => this.acts.wholeDrive()),
      button('This place', () => this.acts.thisPlace()),
    );
    DomEvent.disableClickPropagation(box);
    return box;
  }
}

function button(say: string, act: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = say;
  made.addEventListener('click', act);
  return made;
}
