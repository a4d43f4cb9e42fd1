/**
 * Where the sun stands, by FAO-56, with latitude north positive and days of the year from 1 to 366.
 * Source of all: [Allen et al. 1998, FAO-56] ch. 3 (read).
 */

const solarConstantMjPerM2Min = 0.082; // Gsc

/** Squared inverse relative distance to the sun (the source's dr). Source: eq. 23. */
export function inverseDistance(dayOfYear: number): number {
  return 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365);
}

/** Declination, radians. Source: eq. 24. */
export function declinationRad(dayOfYear: number): number {
  return 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);
}

/**
 * Sunset hour angle, radians (the source's omega_s).
 *
 * @returns 0 in the polar night to pi in the polar day, where the source's arccosine has no value
 * Source: eq. 25.
 */
export function sunsetHourAngleRad(latitudeDeg: number, dayOfYear: number): number {
  const cosine = -Math.tan(radians(latitudeDeg)) * Math.tan(declinationRad(dayOfYear));
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}

/**
 * Radiation of a day above the atmosphere (the source's Ra).
 *
 * @returns MJ/m2, >= 0; 0 in the polar night
 * @example extraterrestrialMj(-20, 246) // 32.19
 * Source: eq. 21.
 */
export function extraterrestrialMj(latitudeDeg: number, dayOfYear: number): number {
  const phi = radians(latitudeDeg);
  const delta = declinationRad(dayOfYear);
  const ws = sunsetHourAngleRad(latitudeDeg, dayOfYear);
  const path = ws * Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.sin(ws);
  return Math.max(0, ((24 * 60) / Math.PI) * solarConstantMjPerM2Min * inverseDistance(dayOfYear) * path);
}

/**
 * Hours from geometric sunrise to sunset (the source's N): the sun's centre, no refraction.
 *
 * @returns 0 to 24
 * @example daylightHours(-20, 246) // 11.67
 * Source: eq. 34.
 */
export function daylightHours(latitudeDeg: number, dayOfYear: number): number {
  return (24 / Math.PI) * sunsetHourAngleRad(latitudeDeg, dayOfYear);
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180; // eq. 22
}
