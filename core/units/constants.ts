/** One exact constant per pair of units; the inverse is always derived by division. */
export const M_PER_FT = 0.3048;
export const M_PER_IN = 0.0254;
export const KM_PER_NM = 1.852;
/** Speed of light in vacuum, m/s (exact, SI definition of the metre). */
export const SPEED_OF_LIGHT_M_PER_S = 299_792_458;
