/** How lengths are shown. It changes nothing that is cut. */
export type Show = { readonly unit: "mm" } | { readonly unit: "in"; readonly denominator: 8 | 16 | 32 | 64 };
