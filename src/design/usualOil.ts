/** What is taken of an oil, and of dry metal, whose design says nothing. */

/** Viscosity index of a plain solvent-refined mineral oil. @source practice */
export const USUAL_INDEX = 95;
/** g/cm³ at 15 °C, a mineral oil. @source TribologyHandbook table 25 (the middle of 862 to 897 kg/m³ at 25 °C) */
export const USUAL_DENSITY = 0.86;
/** Dry friction, steel on bronze. @source practice */
export const DRY_FRICTION = 0.12;
