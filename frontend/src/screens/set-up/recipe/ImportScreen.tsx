/** Recipes out of a file: pasted or chosen, told row by row, opened as drafts, never published here. */
import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { BackKey, Cup, MainKey } from "../../../parts/Cup.tsx";
import { Foot, Frame } from "../../../parts/Frame.tsx";
import { Notice, Part, Refusal } from "../../../parts/Plain.tsx";
import { goTo } from "../../../state/route.ts";
import { materials, recipes } from "../../../state/stock.ts";
import { FILES, ROW } from "../../../text/recipe_files.ts";
import { SET_UP } from "../../../text/set_up.ts";
import { readDensities } from "../../common/density.ts";
import { focusFirst } from "../../common/focus.ts";
import { HeadGauge } from "../../common/HeadGauge.tsx";
import { mayWrite, whoMayWrite } from "../who.ts";
import type { ReadFile, ReadRecipe } from "./reading.ts";
import { TextsField } from "./TextsField.tsx";
import {
  beginMaterial,
  openImported,
  readImport,
  sameNamed,
  wrongNumbers,
  wrongRows,
} from "./use_import.ts";
import { useTexts } from "./use_texts.ts";
import "../../common/rows.css";
import "../set_up.css";

const SHOWN_MAX = 50;

/** `#/set-up/recipe-import`. */
export function Screen() {
  const texts = useTexts();
  const trouble = useSignal<string | null>(null);
  useEffect(() => void readDensities(), []);
  const { name, text } = texts.now;
  const known = [materials.value, recipes.value];
  const read = useMemo(() => (text.trim() === "" ? null : readImport(text)), [text, ...known]);
  const [first] = read?.recipes ?? [];
  const open = async (recipe: ReadRecipe) => {
    const to = await openImported(recipe);
    if (to === null) trouble.value = FILES.draft_taken(recipe.name);
    else goTo(to);
  };
  return (
    <Frame
      where={FILES.import_where}
      title={FILES.import_title}
      gauge={<HeadGauge />}
      calm={FILES.import_calm}
      benchName={SET_UP.bench}
      bench={
        <Foot>
          <BackKey href="#/set-up/recipes" />
          <MainKey
            words={first === undefined ? FILES.import_title : FILES.draft(first.name)}
            notReady={first === undefined ? FILES.no_rows : mayImport()}
            onNotReady={() => focusFirst("text")}
            onPress={() => first !== undefined && void open(first)}
          />
        </Foot>
      }
    >
      <Refusal sentence={trouble.value} />
      <TextsField texts={texts} trouble={trouble} />
      {read !== null && <Says file={name} read={read} onOpen={(recipe) => void open(recipe)} />}
    </Frame>
  );
}

function mayImport(): string | null {
  return mayWrite("recipe_published") ? null : whoMayWrite();
}

function Says(props: {
  /** "" for what was pasted. */
  file: string;
  read: ReadFile;
  onOpen: (recipe: ReadRecipe) => void;
}) {
  const { file, onOpen } = props;
  const { recipes: found, wrong, missing } = props.read;
  const shown = useSignal(SHOWN_MAX);
  const bad = useMemo(() => wrongNumbers(wrong), [wrong]);
  return (
    <>
      {wrong.length > 0 && (
        <Part title={FILES.wrong}>
          <ul class="differences">
            {wrong.slice(0, SHOWN_MAX).map((each) => (
              <li key={`${each.number} ${each.column} ${each.sentence}`}>
                {file === ""
                  ? ROW.at(each.number, each.column, each.sentence)
                  : ROW.at_in(file, each.number, each.column, each.sentence)}
              </li>
            ))}
          </ul>
          {wrong.length > SHOWN_MAX && (
            <p class="second">{FILES.wrong_more(wrong.length - SHOWN_MAX)}</p>
          )}
        </Part>
      )}
      {missing.length > 0 && (
        <Part title={FILES.missing}>
          <p class="second">{FILES.missing_calm}</p>
          <p class="key-row">
            {missing.slice(0, SHOWN_MAX).map((each) => (
              <Cup key={each.name} onPress={() => void beginMaterial(each).then(goTo)}>
                {FILES.make(each.name)}
              </Cup>
            ))}
          </p>
        </Part>
      )}
      <Part title={FILES.ready}>
        {found.length === 0 && <Notice>{FILES.none}</Notice>}
        {found.slice(0, shown.value).map((each) => (
          <ReadOne key={each.name} recipe={each} bad={bad} onOpen={onOpen} />
        ))}
        {found.length > shown.value && (
          <Cup onPress={() => (shown.value += SHOWN_MAX)}>
            {FILES.show_more(found.length - shown.value)}
          </Cup>
        )}
      </Part>
    </>
  );
}

function ReadOne(props: {
  recipe: ReadRecipe;
  /** The rows in which something is wrong. */
  bad: ReadonlySet<number>;
  onOpen: (recipe: ReadRecipe) => void;
}) {
  const { recipe, bad, onOpen } = props;
  const count = wrongRows(recipe, bad);
  return (
    <div>
      <p class="second">
        {sameNamed(recipe) === null ? FILES.new_one : FILES.next_of}
        {count > 0 && `. ${FILES.has_wrong(count)}`}
      </p>
      {mayImport() === null && <Cup onPress={() => onOpen(recipe)}>{FILES.draft(recipe.name)}</Cup>}
    </div>
  );
}
