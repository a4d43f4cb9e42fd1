/** How residue rots where nothing is said of it; sod lays new litter every year. */
export const usualDecay = { value: "by weather", underSod: "none" } as const;

export const usualDecaySaid = `${usualDecay.value}; under sod ${usualDecay.underSod}`;
