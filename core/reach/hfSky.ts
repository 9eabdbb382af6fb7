import type { Conditions } from '../model/project.ts';
import { foEMhz } from '../propagation/eLayer.ts';
import { hoursAfterSunset, solarDeclinationDeg, solarZenithDeg } from '../propagation/sun.ts';

/** The ionosphere over one hour of local solar time. */
export interface SkyHour {
  readonly hour: number;
  readonly sunZenithDeg: number;
  readonly foF2Mhz: number;
  readonly foEMhz: number;
}

const HOURS = 24;
/** Hours in which the F2 layer follows a change of the sun by 63 %: it builds up faster than it decays (judgement). */
const BUILD_HOURS = 2;
const DECAY_HOURS = 4;
/** Days the layer is followed until one is like the next. */
const DAYS = 4;

/**
 * The sky over a day at the latitude, month and activity stated. foE by the closed form; foF2 swings between the two figures
 * the user states by a law of our own: it follows the height of the sun with a delay, two hours up and four down, stretched so
 * that its highest hour is the day's figure and its lowest the night's. Where the sun neither rises nor sets it stands still.
 * Checked by: tests/published/eLayer.test.ts (foE, sun), tests/unit/reach/hfSky.test.ts
 */
export function skyOfDay(conditions: Conditions): readonly SkyHour[] {
  const { latitudeDeg, month, sunspotNumber, foF2DayMhz, foF2NightMhz } = conditions;
  const place = { latitudeDeg, declinationDeg: solarDeclinationDeg(month) };
  const zeniths = Array.from({ length: HOURS }, (_, hour) => solarZenithDeg(place, hour));
  const shares = layerShares(zeniths.map((zenithDeg) => Math.max(0, Math.cos((zenithDeg * Math.PI) / 180))));
  return zeniths.map((sunZenithDeg, hour) => {
    const hours = sunZenithDeg < 90 ? null : hoursAfterSunset(place, hour);
    return {
      hour,
      sunZenithDeg,
      foF2Mhz: foF2NightMhz + (foF2DayMhz - foF2NightMhz) * (shares[hour] ?? 0),
      foEMhz: foEMhz({ ...place, zenithDeg: sunZenithDeg, sunspotNumber, hoursAfterSunset: hours }),
    };
  });
}

/** How built up the layer is in each hour, 0 at its lowest to 1 at its highest, for the light that falls on it. */
function layerShares(light: readonly number[]): readonly number[] {
  const levels: number[] = [...light];
  let level = 0;
  for (let step = 0; step < DAYS * HOURS; step += 1) {
    const target = light[step % HOURS] ?? 0;
    level += (target - level) * (1 - Math.exp(-1 / (target > level ? BUILD_HOURS : DECAY_HOURS)));
    levels[step % HOURS] = level;
  }
  const [least, most] = [Math.min(...levels), Math.max(...levels)];
  const isSteady = most - least < 1e-3;
  return levels.map((value) => (isSteady ? Math.round(Math.min(1, most)) : (value - least) / (most - least)));
}
