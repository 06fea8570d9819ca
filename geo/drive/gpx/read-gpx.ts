import type { Result } from '../../result.ts';
import { closeElement, finishReading, hearText, openElement, startReading } from './gpx-reading.ts';
import { refuseText } from './gpx-refusals.ts';
import type { RouteFile } from './route.ts';
import { walkXml, type XmlVisitor } from './strict-xml.ts';

/**
 * Reads GPX 1.0 or 1.1 from decoded text, strictly: sound XML to its last byte, every position a number on Earth,
 * nothing skipped in silence. Vendors' shape points (`rpt` inside `rtept`) are positions of the route.
 *
 * @returns tracks before routes, each in the file's order, those without positions included so that numbers hold;
 * or what is wrong, with its line: damaged XML, DOCTYPE, another kind of file, a bad position, nothing to drive.
 * @param beside is told the same elements in the same walk
 */
export function readGpx(text: string, beside?: XmlVisitor): Result<RouteFile> {
  if (!/^[\uFEFF\s]*</u.test(text)) return refuseText(text);
  const reading = startReading();
  const walked = walkXml(text, {
    open: (element) => openElement(reading, element) ?? beside?.open(element),
    text: (piece, line) => hearText(reading, piece, line) ?? beside?.text(piece, line),
    close() {
      closeElement(reading);
      beside?.close();
    },
  });
  return walked.ok ? finishReading(reading) : walked;
}
