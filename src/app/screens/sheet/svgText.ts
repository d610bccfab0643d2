/** A drawing of the page as the text of an SVG file that stands alone, as large as on paper. */
import { PER_MM } from './ink.ts';

export function svgText(svg: SVGSVGElement): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const { width, height } = svg.viewBox.baseVal;
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', `${width / PER_MM}mm`);
  copy.setAttribute('height', `${height / PER_MM}mm`);
  return `${new XMLSerializer().serializeToString(copy)}\n`;
}
