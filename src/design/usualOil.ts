/** What is taken of an oil, and of dry metal, whose design says nothing. */

/** Viscosity index of a plain solvent-refined mineral oil: common practice, no source. */
export const USUAL_INDEX = 95;
/** g/cm³ at 15 °C, a mineral oil. @source the middle of Tribology Handbook, table 25: 862 to 897 kg/m³ at 25 °C */
export const USUAL_DENSITY = 0.86;
/** Dry friction, steel on bronze: common practice, no source. */
export const DRY_FRICTION = 0.12;
