import { useEffect, useRef } from 'preact/hooks';

/**
 * A drive sheet in the page, as its file has it. The window's policy lets no page in it bring styles of its own, so they
 * are given to a shadow tree as the window's; nothing else of the sheet can act.
 */
export function SheetView({ html, name }: { html: string; name: string }) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const host = place.current;
    if (host) fill(host.shadowRoot ?? host.attachShadow({ mode: 'open' }), html);
  }, [html]);
  return <section ref={place} class="sheet-place" aria-label={name} />;
}

/** The one element of styles in a sheet's head. */
const STYLE = /<style>([^<]*)<\/style>/u;

function fill(root: ShadowRoot, html: string): void {
  // texts in it have no plain quotes: this is an attribute wherever it stands
  const text = html.replaceAll(' style="', ' data-style="');
  const [, css = ''] = STYLE.exec(text) ?? [];
  const parsed = new DOMParser().parseFromString(text.replace(STYLE, ''), 'text/html');
  const style = new CSSStyleSheet();
  style.replaceSync(css);
  forShadow(style.cssRules);
  const body = document.createElement('div');
  body.className = 'sheet-body';
  body.append(...parsed.body.childNodes);
  for (const element of body.querySelectorAll<HTMLElement | SVGElement>('[data-style]'))
    element.style.cssText = element.getAttribute('data-style') ?? '';
  root.adoptedStyleSheets = [style];
  root.replaceChildren(body);
}

/** In a shadow tree the page is its host, and its body the one element in it. */
function forShadow(rules: CSSRuleList): void {
  for (const rule of rules) {
    if (rule instanceof CSSStyleRule)
      rule.selectorText = rule.selectorText
        .split(',')
        .map((each) =>
          each
            .trim()
            .replace(/^(?::root|html)\b/, ':host')
            .replace(/^body\b/, '.sheet-body'),
        )
        .join(',');
    else if (rule instanceof CSSMediaRule) forShadow(rule.cssRules);
  }
}
