/** A default that holds while a field is left out. */
export interface DefaultUsed {
  /** `soil.layers[0].bulkDensity` */
  readonly field: string;
  /** `1.35 g/cm^3` */
  readonly value: string;
  /** Where it comes from. */
  readonly why: string;
}
