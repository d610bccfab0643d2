/** The oil of a design, as the engine has it and as a person may state it. */

import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import {
  constantOil,
  gradeMidpoint,
  ISO_GRADES,
  type Oil,
  oilFromPoints,
  oilOfGrade,
  viscosityAt100,
} from '../../engine/film/oil.ts';
import { kilogramsPerCubicMetre } from '../convert.ts';

export { ISO_GRADES } from '../../engine/film/oil.ts';

type OilGiven = NonNullable<Design['run']>['oil'];

export function toOil(oil: OilGiven): Oil {
  const density = oil.density === undefined ? undefined : kilogramsPerCubicMetre(oil.density);
  if (oil.viscosity !== undefined) return constantOil(oil.viscosity, density);
  if (oil.measured !== undefined) return oilFromPoints(oil.measured[0]!, oil.measured[1]!, density);
  return oilOfGrade(oil.grade!, oil.index, density);
}

interface OilKnown {
  /** mm²/s at 40 and 100 °C */
  at40: number;
  at100: number;
  /** Pa·s */
  viscosity(celsius: number): number;
}

/** All ways of stating an oil from the one that is stated; where only one viscosity is, those of the nearest grade. */
export function oilKnown(oil: OilGiven, ambient: number): OilKnown {
  const { viscosity } = toOil(oil);
  if (oil.measured) {
    const [at40, at100] = toOil(oil).kinematic!;
    return { at40, at100, viscosity };
  }
  const at40 = gradeMidpoint(oil.grade ?? nearestGrade(oil.viscosity!, ambient));
  return { at40, at100: viscosityAt100(at40, oil.index ?? defaultAt('run.oil.index')), viscosity };
}

/** The grade that is nearest to a viscosity (Pa·s) at a temperature. */
function nearestGrade(viscosity: number, celsius: number): number {
  const off = (grade: number) => Math.abs(Math.log(oilOfGrade(grade).viscosity(celsius) / viscosity));
  return ISO_GRADES.reduce<number>((best, grade) => (off(grade) < off(best) ? grade : best), ISO_GRADES[0]);
}
