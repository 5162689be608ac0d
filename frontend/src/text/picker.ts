/** Words of choosing one of many and of writing a new name. */
import { figure } from "./numbers.ts";

export const PICKER = {
  change: "change",
  all: (count: number) => `All ${figure(String(count))}`,
  new_name: "name, new",
  use: "Use this name",
  name: "The name",
  cancel: "Choose from the list",
};
