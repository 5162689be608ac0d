/** Words for kinds of places and materials, as second words beside a name. */
export const PLACE_SORTS: Record<string, string> = {
  kitchen: "kitchen",
  store: "store",
  stall: "stall",
  box: "own box",
};

export const MATERIAL_SORTS: Record<string, string> = {
  ingredient: "ingredient",
  packaging: "packaging",
  product: "product",
};
