interface HatchProps {
  /** By which it is filled with: `url(#id)`. */
  readonly id: string;
  readonly stroke: string;
  readonly strokeWidth: number;
  /** From line to line. */
  readonly gapPx?: number;
  /** Of the same colour between the lines, 0 to 1. */
  readonly tint?: number;
}

/** Slanted lines, to fill an area with. */
export function Hatch({ id, stroke, strokeWidth, gapPx = 8, tint = 0 }: HatchProps) {
  return (
    <defs>
      <pattern
        id={id}
        width={gapPx}
        height={gapPx}
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        {tint > 0 && <rect width={gapPx} height={gapPx} fill={stroke} fill-opacity={tint} />}
        <line x1="0" y1="0" x2="0" y2={gapPx} stroke={stroke} stroke-width={strokeWidth} />
      </pattern>
    </defs>
  );
}
