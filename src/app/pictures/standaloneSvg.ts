/**
 * A picture of the screen as the text of an SVG file that stands alone: what style sheets and themes made of it is
 * written into it.
 */

/** What a picture's look hangs on; inherited ones too, since no style sheet goes with the file. */
const LOOK = [
  'fill',
  'fill-opacity',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'vector-effect',
  'opacity',
  'paint-order',
  'text-anchor',
  'dominant-baseline',
  'font-family',
  'font-size',
  'font-weight',
  'font-style',
  'display',
  'visibility',
];
const SVG = 'http://www.w3.org/2000/svg';

/** As large as on the screen, on the colour it stands on there. */
export function standaloneSvg(svg: SVGSVGElement): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const { width, height } = svg.getBoundingClientRect();
  const copies = [copy, ...copy.querySelectorAll('*')];
  for (const [i, shown] of [svg, ...svg.querySelectorAll('*')].entries()) {
    const style = getComputedStyle(shown);
    const twin = copies[i]!;
    for (const name of LOOK) twin.setAttribute(name, style.getPropertyValue(name));
    for (const name of ['class', 'style', 'tabindex']) twin.removeAttribute(name);
  }
  const ground = document.createElementNS(SVG, 'rect');
  for (const [name, value] of Object.entries({ width: '100%', height: '100%', fill: groundOf(svg) }))
    ground.setAttribute(name, value);
  copy.prepend(ground);
  copy.setAttribute('xmlns', SVG);
  copy.setAttribute('width', `${width}`);
  copy.setAttribute('height', `${height}`);
  if (!copy.hasAttribute('viewBox')) copy.setAttribute('viewBox', `0 0 ${width} ${height}`);
  return `${new XMLSerializer().serializeToString(copy)}\n`;
}

/** The first colour behind it that is not clear. */
function groundOf(element: Element): string {
  for (let at: Element | null = element; at !== null; at = at.parentElement) {
    const { backgroundColor } = getComputedStyle(at);
    if (!/^(transparent|rgba\(.*, 0\))$/.test(backgroundColor)) return backgroundColor;
  }
  return '#fff';
}
