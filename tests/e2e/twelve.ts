/** Twelve alike, so that some of their marks may leave at the end of the day. */
const names = [
  ...["Amber Vole", "Birch Comet", "Clover Axe", "Dapple Storm", "Elder Spark", "Fern Anvil"],
  ...["Gorse Bolt", "Hazel Brick", "Ivy Clatter", "Juno Slate", "Kestrel Fuse", "Larch Thunder"],
];
export const roster = `league,name,number,birth_year,category,board,share
${names.map((name, index) => `Copse Side,${name},${index + 1},1996,open,name,yes`).join("\n")}
`;
export const results = `league,number,test,variant,reps,off_at_end
${names
  .slice(1)
  .map((_, index) => `Copse Side,${index + 2},push-up,full,${20 + (index % 2)},0`)
  .join("\n")}
`;
