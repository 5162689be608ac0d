/** Recipes out of a file: pasted or chosen, told row by row, opened as drafts, never published here. */
import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { BackKey, Cup, MainKey } from "../../../parts/Cup.tsx";
import { TextField } from "../../../parts/Fields.tsx";
import { Foot, Frame } from "../../../parts/Frame.tsx";
import { Notice, Part, Refusal } from "../../../parts/Plain.tsx";
import { goTo } from "../../../state/route.ts";
import { materials, recipes } from "../../../state/stock.ts";
import { FILES, ROW } from "../../../text/recipe_files.ts";
import { SET_UP } from "../../../text/set_up.ts";
import { readDensities } from "../../common/density.ts";
import { useDrafted } from "../../common/drafted.ts";
import { focusFirst } from "../../common/focus.ts";
import { HeadGauge } from "../../common/HeadGauge.tsx";
import { mayWrite, whoMayWrite } from "../who.ts";
import type { Wrong } from "./file_text.ts";
import type { ReadFile, ReadRecipe } from "./reading.ts";
import { beginMaterial, openImported, readImport, sameNamed, wrongRows } from "./use_import.ts";
import "../../common/rows.css";
import "../set_up.css";

const TEXT_CHARS_MAX = 2_000_000;
const FILE_BYTES_MAX = 2_000_000;
const SHOWN_MAX = 50;

/** `#/set-up/recipe-import`. */
export function Screen() {
  const { typed, type } = useDrafted("set-up/recipe-import", { text: "" });
  const trouble = useSignal<string | null>(null);
  useEffect(() => void readDensities(), []);
  const { text } = typed.value;
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
      <Source text={text} onText={(now) => type({ text: now })} trouble={trouble} />
      {read !== null && <Says read={read} onOpen={(recipe) => void open(recipe)} />}
    </Frame>
  );
}

function mayImport(): string | null {
  return mayWrite("recipe_published") ? null : whoMayWrite();
}

function Source(props: {
  text: string;
  onText: (text: string) => void;
  trouble: { value: string | null };
}) {
  const { text, onText, trouble } = props;
  async function take(file: File | undefined) {
    if (file === undefined) return;
    trouble.value = file.size > FILE_BYTES_MAX ? FILES.too_large : null;
    if (trouble.value === null) onText(await file.text());
  }
  return (
    <>
      <div id="field-text">
        <TextField
          label={FILES.paste}
          hint={FILES.paste_hint}
          value={text}
          onValue={onText}
          mostChars={TEXT_CHARS_MAX}
          lines={6}
        />
      </div>
      <div class="field">
        <label for="recipe-file">{FILES.file}</label>
        <input
          id="recipe-file"
          type="file"
          accept=".csv,.json,.txt,text/csv,application/json"
          onChange={(event) => void take(event.currentTarget.files?.[0])}
        />
      </div>
    </>
  );
}

function Says({ read, onOpen }: { read: ReadFile; onOpen: (recipe: ReadRecipe) => void }) {
  const { recipes: found, wrong, missing } = read;
  return (
    <>
      {wrong.length > 0 && (
        <Part title={FILES.wrong}>
          <ul class="differences">
            {wrong.slice(0, SHOWN_MAX).map((each) => (
              <li key={`${each.number} ${each.column} ${each.sentence}`}>
                {ROW.at(each.number, each.column, each.sentence)}
              </li>
            ))}
          </ul>
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
        {found.map((each) => (
          <ReadOne key={each.name} recipe={each} wrong={wrong} onOpen={onOpen} />
        ))}
      </Part>
    </>
  );
}

function ReadOne(props: {
  recipe: ReadRecipe;
  wrong: readonly Wrong[];
  onOpen: (recipe: ReadRecipe) => void;
}) {
  const { recipe, wrong, onOpen } = props;
  const count = wrongRows(recipe, wrong);
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
