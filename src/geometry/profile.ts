/** A place in a plane, mm. */
export type Point = { readonly x: number; readonly y: number };

/**
 * A corner of a profile and the edge that leaves it.
 *
 * `bulge` is tan(sweep / 4) of that edge, as DXF has it: 0 straight, 1 a half circle, positive turns left.
 * `by` names the feature the edge came from. It is opaque here: booleans and offsets copy it, and an arc that
 * joins two edges gets "a|b".
 */
export type Vertex = Point & { readonly bulge: number; readonly by: string };

/** A closed chain of lines and arcs, counter-clockwise. The last vertex's edge returns to the first. */
export type Profile = readonly Vertex[];

/** An open chain. The last vertex only ends it; its bulge is 0 and means nothing. */
export type Path = readonly Vertex[];

/** An area with holes. Holes are stored counter-clockwise too; writers turn them where a format asks for it. */
export type Region = { readonly outer: Profile; readonly holes: readonly Profile[] };

/** An axis-parallel rectangle, mm. */
export type Extents = { readonly min: Point; readonly max: Point };
