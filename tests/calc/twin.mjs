// The TypeScript core as a process: asks on stdin, one JSON a line, answers on stdout.
// `names` instead of a question lists the public functions of each file.
import { readdirSync } from "node:fs";
import { createInterface } from "node:readline";

const CALC = new URL("../../frontend/src/calc/", import.meta.url);
const { answerTo, snakeCase } = await import(new URL("vectors_registry.ts", CALC));

async function publicNames() {
  const files = readdirSync(CALC).filter(
    (name) => name.endsWith(".ts") && !name.endsWith(".test.ts") && !name.startsWith("vectors_"),
  );
  const names = {};
  for (const name of files) {
    const exported = Object.entries(await import(new URL(name, CALC)));
    names[name.slice(0, -3)] = exported
      .filter(([key, value]) => typeof value === "function" && !/^[A-Z]/.test(key))
      .map(([key]) => snakeCase(key))
      .sort();
  }
  return names;
}

/** What a function throws is an answer too: it differs from the other language's and is shown. */
function answerOrTrouble(asked) {
  try {
    return answerTo(asked.file, asked.function, asked.given);
  } catch (trouble) {
    return { threw: String(trouble) };
  }
}

for await (const line of createInterface({ input: process.stdin })) {
  const asked = JSON.parse(line);
  const answer = asked === "names" ? await publicNames() : answerOrTrouble(asked);
  process.stdout.write(`${JSON.stringify(answer)}\n`);
}
