/** Start a batch: which recipe. */
import { quantityIn, textIn } from "../../calc/bodies.ts";
import { Choices } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { goTo } from "../../state/route.ts";
import { recipes } from "../../state/stock.ts";
import { START } from "../../text/start.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { materialOf, quantityText } from "../common/lots.ts";

/** `#/start`. */
export function Screen() {
  return (
    <Frame
      where={START.where}
      title={START.title}
      gauge={<HeadGauge />}
      benchName={START.bench}
      bench={
        <Foot>
          <BackKey href="#/" />
          <MainKey words="" notReady={START.choose_first} />
        </Foot>
      }
    >
      <Choices
        name={START.recipes}
        items={recipes.value.map(({ id, name, latest }) => {
          const makes = quantityIn(latest.body, "makes");
          return {
            id,
            name,
            sub: START.version_of(latest.number, latest.published_on ?? ""),
            right: quantityText(makes, materialOf(textIn(latest.body, "product"))),
          };
        })}
        chosen={null}
        onChoose={(recipe) => goTo(`/start/${recipe}`)}
        none={START.none}
      />
    </Frame>
  );
}
