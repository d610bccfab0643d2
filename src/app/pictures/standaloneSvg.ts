/** A picture of the screen that stands alone: what style sheets and themes made of it is written into it. */

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
export const SVG = 'http://www.w3.org/2000/svg';
/** What is there for the hand alone. */
const FOR_THE_HAND = '.pull-grip, .grip, .hint';

export function svgElement(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, `${value}`);
  return element;
}

/** As large as on the screen; without what the hand takes hold of. */
export function standaloneCopy(svg: SVGSVGElement): SVGSVGElement {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const { width, height } = svg.getBoundingClientRect();
  const copies = [copy, ...copy.querySelectorAll('*')];
  for (const [i, shown] of [svg, ...svg.querySelectorAll('*')].entries()) {
    const style = getComputedStyle(shown);
    const twin = copies[i]!;
    for (const name of LOOK) twin.setAttribute(name, style.getPropertyValue(name));
  }
  for (const grip of copy.querySelectorAll(FOR_THE_HAND)) grip.remove();
  for (const twin of copies) for (const name of ['class', 'style', 'tabindex']) twin.removeAttribute(name);
  copy.setAttribute('width', `${width}`);
  copy.setAttribute('height', `${height}`);
  // Where the page draws it larger than it measures itself (zoom), its own measure is what it is drawn in.
  const [across, down] = [svg.clientWidth || width, svg.clientHeight || height];
  if (!copy.hasAttribute('viewBox')) copy.setAttribute('viewBox', `0 0 ${across} ${down}`);
  return copy;
}

/** The first colour behind it that is not clear. */
export function groundOf(element: Element): string {
  for (let at: Element | null = element; at !== null; at = at.parentElement) {
    const { backgroundColor } = getComputedStyle(at);
    if (!/^(transparent|rgba\(.*, 0\))$/.test(backgroundColor)) return backgroundColor;
  }
  return '#fff';
}
