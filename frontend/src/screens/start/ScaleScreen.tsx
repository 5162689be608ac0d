/** Start a batch: how much, with live amounts, what is at hand and what limits. */
import { textIn } from "../../calc/bodies.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { FieldGroup, NumberField, SelectField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Notice, Part, Refusal } from "../../parts/Plain.tsx";
import { type Recipe, recipes } from "../../state/stock.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { PACK } from "../../text/recipe_lines.ts";
import { START } from "../../text/start.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { quantityText } from "../common/lots.ts";
import { scalesAt } from "../common/scales.ts";
import { Method } from "./Method.tsx";
import { leftToFill, lossOf } from "./packs.ts";
import { ScaledLines } from "./ScaledLines.tsx";
import type { ScaledBy } from "./scaling.ts";
import { useStart } from "./use_start.ts";
import "./start.css";

/** `#/start/:recipe`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const recipe = recipes.value.find((each) => each.id === params.recipe);
  if (recipe === undefined) {
    return (
      <Instead
        where={START.where}
        title={START.title}
        benchName={START.bench}
        back="#/start"
        on={{ words: START.title, href: "#/start" }}
        says={START.unknown}
      />
    );
  }
  return <Scale key={recipe.id} recipe={recipe} />;
}

function ways(canPack: boolean): { value: ScaledBy; word: string }[] {
  const all: ScaledBy[] = ["as_written", "mass", "packs", "limiting"];
  return all
    .filter((by) => canPack || by !== "packs")
    .map((value) => ({ value, word: START.by[value] }));
}

type Starting = ReturnType<typeof useStart>;

function Scale({ recipe }: { recipe: Recipe }) {
  const starting = useStart(recipe);
  const { typed, type, scaled, by, unit } = starting;
  const isTyped = by === "mass" || by === "packs";
  return (
    <Frame
      where={START.where}
      title={recipe.name}
      isRecorded
      aside={scaled && <b>{START.times(scaled.factor)}</b>}
      calm={START.version(starting.version.number)}
      gauge={<HeadGauge />}
      benchName={START.bench}
      hasKeypad={isTyped}
      bench={
        <>
          {isTyped && (
            <Keypad
              typed={typed.typed}
              onTyped={(text) => type({ typed: text })}
              isWhole={by === "packs"}
            />
          )}
          <Foot>
            <BackKey href="#/start" />
            <StartKey starting={starting} />
          </Foot>
        </>
      }
      side={
        <Part title={START.lines}>
          {scaled === null ? (
            <Notice>{START.how_much_first}</Notice>
          ) : (
            <ScaledLines
              scaled={scaled}
              ranges={starting.ranges}
              byVolume={starting.by_volume}
              scales={scalesAt(starting.place)}
            />
          )}
        </Part>
      }
    >
      <Refusal sentence={starting.hindrance.value?.sentence ?? null} />
      <div id="field-how_much">
        <FieldGroup label={START.how_much}>
          <CupChoice
            name={START.how_much}
            options={ways(starting.canPack)}
            chosen={by}
            onChoose={(way) => type({ by: way, typed: "" })}
          />
        </FieldGroup>
      </div>
      {isTyped && (
        <NumberField
          label={by === "packs" ? START.wanted_packs : START.wanted_amount}
          typed={typed.typed}
          unit={unit}
          isOpen
          onOpen={() => undefined}
        />
      )}
      <Sizes starting={starting} />
      <Loss starting={starting} />
      <Method body={starting.version.body} />
      {recipe.versions.length > 1 && (
        <SelectField
          label={START.versions}
          value={starting.version.entry}
          onValue={(version) => type({ version })}
          options={recipe.versions.map((each) => ({
            value: each.entry,
            word: START.version_of(each.number, each.published_on ?? ""),
          }))}
        />
      )}
      <Kitchen starting={starting} />
    </Frame>
  );
}

/** Into which size it is filled, and how many packs that gives; nothing where there is no size. */
function Sizes({ starting }: { starting: Starting }) {
  const { sizes, pack, scaled, type } = starting;
  if (pack === null) return null;
  const words = ({ net, word }: typeof pack) => PACK.named(amountWords(net.amount, net.unit), word);
  return (
    <>
      <FieldGroup label={START.sizes}>
        <CupChoice
          name={START.sizes}
          options={sizes.map((each) => ({ value: each.size, word: words(each) }))}
          chosen={pack.size}
          onChoose={(size) => type({ size })}
        />
      </FieldGroup>
      {scaled?.packs != null && <p>{START.fills(figure(scaled.packs), words(pack))}</p>}
    </>
  );
}

/** What is expected to be lost of it, and what is left to fill; nothing where none is expected. */
function Loss({ starting }: { starting: Starting }) {
  const { scaled, version, product } = starting;
  const percent = textIn(version.body, "loss_percent");
  if (percent === null || scaled === null) return null;
  const left = leftToFill(scaled.makes, lossOf(version.body));
  return (
    <p>
      {START.after_loss(
        amountWords(percent, "%"),
        quantityText(scaled.makes, product),
        quantityText(left, product),
      )}
    </p>
  );
}

function Kitchen({ starting }: { starting: Starting }) {
  const { kitchens, place, type } = starting;
  if (kitchens.length === 0) return <Notice>{START.no_kitchen}</Notice>;
  return (
    <div id="field-place">
      <FieldGroup label={START.kitchen}>
        <CupChoice
          name={START.kitchen}
          options={kitchens.map((each) => ({ value: each.id, word: each.name }))}
          chosen={place}
          onChoose={(id) => type({ place: id })}
        />
      </FieldGroup>
    </div>
  );
}

function StartKey({ starting }: { starting: Starting }) {
  const { scaled, place, by } = starting;
  const why =
    scaled === null
      ? by === "limiting"
        ? START.nothing_at_hand
        : START.how_much_first
      : place === null
        ? START.kitchen_first
        : null;
  const makes = quantityText(scaled?.makes, starting.product);
  return (
    <MainKey
      words={START.start(makes)}
      notReady={why}
      onNotReady={() => focusFirst(scaled === null ? "how_much" : "place")}
      onPress={() => void starting.start()}
    />
  );
}
