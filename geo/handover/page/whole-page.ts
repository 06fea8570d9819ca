import { type Markup, markup } from './markup.ts';
import { facesFor, type MoreFace } from './more-faces.ts';

interface WholePage {
  readonly title: string;
  /** CSS, with the faces it uses; nothing in it is a stranger's */
  readonly style: string;
  readonly body: Markup;
  readonly faces: Faces;
}

/** Nothing is asked of anyone: no script, no second file, no network. */
const ALONE = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:";

/** One file that needs no other. */
export function wholePage({ title, style, body, faces }: WholePage): string {
  const more = facesFor(body.markup, faces.more ?? []).map(moreRules);
  return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${{ markup: ALONE }}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${title}</title>
<style>${{ markup: [...more, style].join('\n') }}</style>
</head>
<body>
${body}
</body>
</html>
`.markup;
}

/** The program's face where it is given as files in base64 (WOFF2), else the system's own. */
export interface Faces {
  readonly regular?: string;
  readonly bold?: string;
  readonly more?: readonly MoreFace[];
}

export const FACE = '"B612", "Segoe UI", "Noto Sans", system-ui, sans-serif';

/** The face as CSS; the letters it lacks are those of the faces that a page brings along besides, else the system's. */
export function faceRules({ regular, bold }: Faces): string {
  return [
    ...(regular === undefined ? [] : [faceRule(regular, 400, SIGNS)]),
    ...(bold === undefined ? [] : [faceRule(bold, 700, SIGNS)]),
  ].join('\n');
}

/** The face draws brackets all but square, for cockpit screens: in a sentence they are the system's. */
const SIGNS = 'U+0-27,U+2A-10FFFF';

/** Under the same name, so that the browser takes each letter from the face that has it. */
function moreRules({ signs, regular, bold }: MoreFace): string {
  return [
    ...(regular === undefined ? [] : [faceRule(regular, 400, signs)]),
    ...(bold === undefined ? [] : [faceRule(bold, 700, signs)]),
  ].join('\n');
}

function faceRule(base64: string, weight: number, signs: string): string {
  return `@font-face{font-family:"B612";font-weight:${weight};font-style:normal;unicode-range:${signs};src:url(data:font/woff2;base64,${base64}) format("woff2")}`;
}
