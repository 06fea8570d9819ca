import type { Item } from '../../../geo/library/item.ts';
import { printKg, printLimitM } from '../../../geo/units/print.ts';
import { clip } from '../../../geo/units/text.ts';

/** A note in a line or two, every version of it. */
export function printNote({ id, versions }: Item<'note'>): string {
  return versions
    .map(({ name, body }) => {
      const { at, say, heightM, widthM, massKg, seen, until, by, answers, leave } = body;
      const said = [
        ...(heightM === undefined ? [] : [`height ${printLimitM(heightM)}`]),
        ...(widthM === undefined ? [] : [`width ${printLimitM(widthM)}`]),
        ...(massKg === undefined ? [] : [printKg(massKg, 'down')]),
        ...(seen === undefined ? [] : [`seen ${seen}`]),
        ...(until === undefined ? [] : [`until ${until}`]),
        ...(by === undefined ? [] : [`by ${clip(by)}`]),
        ...(leave === undefined ? [] : ['leave given']),
        ...(answers === undefined ? [] : [`answers ${clip(answers.finding)}`]),
      ];
      const version = versions.length > 1 ? ` (version ${name})` : '';
      const details = said.length === 0 ? '' : `\n  ${said.join(', ')}`;
      return `${id}${version} at ${at.lat},${at.lon}: ${clip(say, 500)}${details}\n`;
    })
    .join('');
}
