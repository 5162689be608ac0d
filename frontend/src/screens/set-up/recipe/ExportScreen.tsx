/** One recipe or all of them as a file: CSV or JSON with our own plain columns, made offline. */
import { BackKey, Cup, MainKey } from "../../../parts/Cup.tsx";
import { Foot, Frame } from "../../../parts/Frame.tsx";
import { Part } from "../../../parts/Plain.tsx";
import { nameOf, recipes } from "../../../state/stock.ts";
import { FILES } from "../../../text/recipe_files.ts";
import { SET_UP } from "../../../text/set_up.ts";
import { today } from "../../common/edge.ts";
import { HeadGauge } from "../../common/HeadGauge.tsx";
import { keepFile } from "../../common/keep_file.ts";
import { NotHere } from "../NotHere.tsx";
import { csvOf, jsonOf } from "./file_text.ts";
import { rowsOf } from "./rows.ts";
import "../../common/rows.css";
import "../set_up.css";

const ALL = "all";

/** `#/set-up/recipes/:recipe/export`; `all` stands for all of them. */
export function Screen({ params }: { params: Record<string, string> }) {
  const isAll = params.recipe === ALL;
  const chosen = recipes.value.filter(({ id }) => isAll || id === params.recipe);
  const [first] = chosen;
  if (!isAll && first === undefined) return <NotHere area="recipes" />;
  const rows = chosen.flatMap(({ latest }) => rowsOf(latest, (id) => nameOf("material", id)));
  const back = isAll ? "#/set-up/recipes" : `#/set-up/recipes/${params.recipe}`;
  const file = `recipes-${today()}`;
  return (
    <Frame
      where={FILES.export_where}
      title={isAll ? FILES.export_title : (first?.name ?? "")}
      isRecorded={!isAll}
      gauge={<HeadGauge />}
      calm={FILES.export_calm}
      benchName={SET_UP.bench}
      bench={
        <Foot>
          <BackKey href={back} />
          <MainKey
            words={FILES.csv}
            notReady={rows.length === 0 ? FILES.none : null}
            onPress={() => keepFile(`${file}.csv`, csvOf(rows), "text/csv")}
          />
        </Foot>
      }
    >
      <p class="key-row">
        <Cup onPress={() => keepFile(`${file}.json`, jsonOf(rows), "application/json")}>
          {FILES.json}
        </Cup>
      </p>
      <Part title={FILES.preview}>
        <p class="second">{FILES.rows(rows.length)}</p>
        <ul class="differences">
          {chosen.map(({ id, name }) => (
            <li key={id} class="rec">
              {name}
            </li>
          ))}
        </ul>
      </Part>
    </Frame>
  );
}
