/** Words of two definitions of one name. */

export const SAME_NAME = {
  in_use: (name: string) => `${name} is set up already. Choose it, or write another name.`,
  retired: (name: string) =>
    `${name} is set up already and retired. Use it again, or write another name.`,
  mark: "two of one name",
  says: (name: string) =>
    `Two are called ${name}: two phones set one up each. Rename one, or retire the one not used.`,
};
