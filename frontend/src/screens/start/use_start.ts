import { useEffect } from "preact/hooks";
import { itemsIn, quantityIn, textIn } from "../../calc/bodies.ts";
import { typedNumber } from "../../parts/typing.ts";
import { record } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { kitchen, setKitchen } from "../../state/settings.ts";
import { places, type Recipe, type RecipeVersion } from "../../state/stock.ts";
import { nextCode } from "../common/codes.ts";
import { densityTable, readDensities } from "../common/density.ts";
import { useDrafted } from "../common/drafted.ts";
import { newId } from "../common/edge.ts";
import { materialOf, textField } from "../common/lots.ts";
import { hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { useFound } from "../common/use_found.ts";
import { byWeight, isHousehold, rangeAt } from "./household.ts";
import { type PackSize, packSizes } from "./packs.ts";
import { factorFor, packsWritten, type Scaled, type ScaledBy, scaledVersion } from "./scaling.ts";

const BLANK = { version: "", by: "as_written", typed: "", place: "", size: "" };
const WAYS: readonly ScaledBy[] = ["as_written", "mass", "packs", "limiting"];

/** The way as typed; a draft of an older app may hold another word. */
function wayOf(by: string): ScaledBy {
  return WAYS.find((each) => each === by) ?? "as_written";
}

/** Everything the screen of scaling shows and does. */
export function useStart(recipe: Recipe) {
  const { typed, type, clear } = useDrafted(`start:${recipe.id}`, BLANK);
  const found = useFound(typed);
  const written = versionOf(recipe, typed.value.version);
  const isHouse = itemsIn(written.body, "lines").some((line) => isHousehold(line, measuredAs));
  useEffect(() => {
    if (isHouse) void readDensities();
  }, [isHouse]);
  const { version, measures, by_volume } = byWeight(written, densityTable.value, measuredAs);
  const makes = quantityIn(version.body, "makes");
  const product = materialOf(textIn(version.body, "product"));
  const by = wayOf(typed.value.by);
  const unit = by === "packs" ? "pc" : (makes?.unit ?? "g");
  const number = typedNumber(typed.value.typed);
  const packNet = product?.fields.pack_net;
  const hasPackNet = typeof packNet === "object" && packNet !== null;
  const sizes = packSizes(version.body);
  const pack = sizes.find(({ size }) => size === typed.value.size) ?? sizes[0] ?? null;
  const factor = factorFor(version, {
    by,
    typed: number,
    unit,
    packNet: hasPackNet ? { ...packNet } : null,
    pack,
  });
  const scaled = factor === null ? null : scaledVersion(version, factor, by, pack);
  const ranges = new Map(
    [...measures].map(([line, measure]) => [
      line,
      factor === null ? null : rangeAt(measure, factor),
    ]),
  );
  const kitchens = places.value.filter(
    (each) => !each.is_retired && (each.fields.sort === "kitchen" || each.id === kitchen.value),
  );
  const [only] = kitchens;
  const place =
    typed.value.place || kitchen.value || (kitchens.length === 1 ? only?.id : null) || null;

  async function start() {
    const code = nextCode(product);
    if (scaled === null || place === null || code === null) return;
    const batch = newId();
    const answer = await record("batch_started", {
      batch,
      code,
      place,
      ...startBody({ recipe, version, by, scaled, pack }),
    });
    found.value = hindrance(answer);
    if (found.value !== null) return;
    tremble(1);
    if (kitchen.value === null) setKitchen(place);
    clear();
    goTo(`/lay-out/${batch}`);
  }

  return {
    typed: typed.value,
    type,
    version,
    by,
    unit,
    scaled,
    ranges,
    by_volume,
    place,
    kitchens,
    product,
    sizes,
    pack,
    canPack: packsWritten(version) !== null || hasPackNet || pack !== null,
    hindrance: found,
    start,
  };
}

function measuredAs(id: string | null) {
  const material = materialOf(id);
  return {
    measured_by: textField(material, "measured_by"),
    density_of: textField(material, "density_of"),
  };
}

function versionOf(recipe: Recipe, entry: string): RecipeVersion {
  return recipe.versions.find((each) => each.entry === entry) ?? recipe.latest;
}

function startBody(given: {
  recipe: Recipe;
  version: RecipeVersion;
  by: ScaledBy;
  scaled: Scaled;
  pack: PackSize | null;
}) {
  const { recipe, version, by, scaled, pack } = given;
  const target = textIn(version.body, "target_solids_percent");
  return {
    recipe: recipe.id,
    recipe_version: version.entry,
    product: version.body.product,
    makes: scaled.makes,
    scaled_by: by,
    lines: scaled.lines.map((line) => line.body),
    steps: version.body.steps ?? [],
    ...(target === null ? {} : { target_solids_percent: target }),
    ...(pack === null ? {} : { pack_net: pack.net }),
  };
}
