/** The shelf: from today everything is two taps away. */
import { Cup, SignCup } from "../../parts/Cup.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { takeUpdate, updateIsReady } from "../../state/app.ts";
import { dirtyDrafts } from "../../state/drafts.ts";
import { light, setLight } from "../../state/settings.ts";
import { TODAY } from "../../text/today.ts";

/** Ten signs of one level; and the new version, when one waits. */
export function Shelf() {
  const words = TODAY.shelf_words;
  const isSun = light.value === "sun";
  return (
    <>
      <nav class="shelf" aria-label={TODAY.shelf}>
        <SignCup sign="crate" word={words.receive} href="#/receive" />
        <SignCup sign="kettle" word={words.start} href="#/start" />
        <SignCup sign="stall" word={words.stall} href="#/stall" />
        <SignCup sign="jar" word={words.stock} href="#/stock" />
        <SignCup sign="trace" word={words.trace} href="#/trace" />
        <SignCup sign="ledger" word={words.batches} href="#/batches" />
        <SignCup sign="column" word={words.sums} href="#/sums" />
        <SignCup sign="spoon" word={words.practise} href="#/skills" />
        <SignCup sign="recipe" word={words.set_up} href="#/set-up" />
        <Cup class="sign-cup" isChosen={isSun} onPress={() => setLight(isSun ? "phone" : "sun")}>
          <Icon name="today" size={36} />
          {words.sun}
        </Cup>
      </nav>
      {updateIsReady.value && <Update />}
    </>
  );
}

function Update() {
  const mustWait = dirtyDrafts.value.length > 0;
  return (
    <p class="update">
      <span>
        {TODAY.update} {mustWait && TODAY.update_waits}
      </span>
      {!mustWait && <Cup onPress={() => takeUpdate()}>{TODAY.take_update}</Cup>}
    </p>
  );
}
