/**
 * Air pressure at an elevation, in the standard atmosphere at 20 C.
 *
 * @param elevationM above sea level, m; below 40 km
 * @returns kPa; 101.3 at sea level
 * @example airPressureKPa(1800) // 81.76
 * Source: [Allen et al. 1998, FAO-56] eq. 7 (read).
 */
export function airPressureKPa(elevationM: number): number {
  return 101.3 * ((293 - 0.0065 * elevationM) / 293) ** 5.26;
}

/**
 * Psychrometric constant (the source's gamma).
 *
 * @param pressureKPa air pressure, kPa
 * @returns kPa per C
 * @example psychrometricKPaPerC(81.8) // 0.0544
 * Source: [Allen et al. 1998, FAO-56] eq. 8 (read).
 */
export function psychrometricKPaPerC(pressureKPa: number): number {
  return 0.000665 * pressureKPa;
}

/** Water evaporated by 1 MJ/m2, mm. Source: [Allen et al. 1998, FAO-56] eq. 20 (read). */
export const evaporationMmPerMj = 0.408;
