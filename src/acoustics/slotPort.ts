/** A board that only the port needs, as far as it stands in the box, mm. */
export type PortPanel = { readonly length: number; readonly width: number; readonly thickness: number };

/**
 * A port made of panels, mm: the air's section and its length inside the box, along the middle; and the panels that part
 * it from the box. A side that is a wall of the box is none of them.
 */
export type SlotPort = {
  readonly width: number;
  readonly height: number;
  readonly length: number;
  readonly panels: readonly PortPanel[];
};

/**
 * What a slot port takes from the air of a box: the air in it and its panels. A square bend needs no correction, since an
 * L of legs a and b and height h has the area h (a + b - h), which is h times the length along its middle.
 *
 * Units:   mm; result L.
 * Source:  air and panels, common practice, no source; the bend is elementary geometry.
 */
export function slotPortL({ width, height, length, panels }: SlotPort): number {
  const air = width * height * length;
  return panels.reduce((sum, panel) => sum + panel.length * panel.width * panel.thickness, air) / 1e6;
}
