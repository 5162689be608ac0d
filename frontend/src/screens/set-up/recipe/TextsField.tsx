/** The text of a file to bring in: pasted, or of one of the files that were chosen. */
import { CupChoice } from "../../../parts/Choices.tsx";
import { Cup } from "../../../parts/Cup.tsx";
import { FieldGroup, TextField } from "../../../parts/Fields.tsx";
import { FILES } from "../../../text/recipe_files.ts";
import { textIn } from "./file_bytes.ts";
import type { SourceText, Texts } from "./use_texts.ts";

const TEXT_CHARS_MAX = 2_000_000;
const FILE_BYTES_MAX = 2_000_000;

/** Which text, the text itself, and the way to more files. */
export function TextsField(props: { texts: Texts; trouble: { value: string | null } }) {
  const { texts, trouble } = props;
  const nameNow = texts.now.name === "" ? FILES.pasted : texts.now.name;
  async function take(files: readonly File[]) {
    const read = await Promise.all(files.map(textOf));
    const wrong = read.filter((each) => typeof each === "string");
    trouble.value = wrong.length === 0 ? null : wrong.join(" ");
    texts.add(read.filter((each) => typeof each !== "string"));
  }
  return (
    <>
      {texts.all.length > 1 && (
        <FieldGroup label={FILES.which}>
          <CupChoice
            name={FILES.which}
            options={texts.all.map(({ name }, at) => ({
              value: String(at),
              word: name === "" ? FILES.pasted : name,
            }))}
            chosen={String(texts.at)}
            onChoose={(at) => texts.look(Number(at))}
          />
        </FieldGroup>
      )}
      <div id="field-text">
        <TextField
          label={FILES.paste}
          hint={FILES.paste_hint}
          value={texts.now.text}
          onValue={texts.type}
          mostChars={TEXT_CHARS_MAX}
          lines={6}
        />
      </div>
      {texts.now.text !== "" && (
        <p class="key-row">
          <Cup onPress={texts.takeAway}>{FILES.take_away(nameNow)}</Cup>
        </p>
      )}
      <div class="field">
        <label for="recipe-file">{FILES.file}</label>
        <input
          id="recipe-file"
          type="file"
          multiple
          accept=".csv,.json,.txt,text/csv,application/json"
          onChange={({ currentTarget }) => {
            const files = [...(currentTarget.files ?? [])];
            // Else the same file, put right meanwhile, could not be chosen again.
            currentTarget.value = "";
            void take(files);
          }}
        />
      </div>
    </>
  );
}

/** The text of a file, or one sentence why it cannot be read. */
async function textOf(file: File): Promise<SourceText | string> {
  if (file.size > FILE_BYTES_MAX) return FILES.too_large(file.name);
  const text = textIn(new Uint8Array(await file.arrayBuffer()));
  if (text === null) return FILES.not_utf8(file.name);
  return text.trim() === "" ? FILES.empty(file.name) : { name: file.name, text };
}
