export declare const usualPlaces: readonly string[];
export declare function findChromium(): string | null;
