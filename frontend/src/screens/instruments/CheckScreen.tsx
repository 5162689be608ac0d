/** A guided check: one thing to do a screen, its reading, and at the end what it says. */

import type { Defined } from "../../state/stock.ts";
import { instruments } from "../../state/stock.ts";
import { CHECK } from "../../text/checks.ts";
import { INSTRUMENTS } from "../../text/instruments.ts";
import type { InstrumentShown } from "../common/batches.ts";
import { instrumentsInUse } from "../common/batches.ts";
import { Instead } from "../common/Instead.tsx";
import { AltitudePage, WaterPage, WhichPage } from "./BeforeReading.tsx";
import { KnownPage } from "./KnownPage.tsx";
import { ResultPage } from "./ResultPage.tsx";
import { StagePage } from "./StagePage.tsx";
import { useCheck } from "./use_check.ts";
import "../common/rows.css";
import "./instruments.css";

/** `#/instruments/:id/check`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const instrument = instrumentsInUse(null).find((each) => each.id === params.id);
  const defined = instruments.value.find((each) => each.id === params.id);
  if (instrument === undefined || defined === undefined) {
    return (
      <Instead
        where={INSTRUMENTS.where}
        title={INSTRUMENTS.check}
        benchName={CHECK.bench}
        back="#/instruments"
        on={{ words: INSTRUMENTS.all, href: "#/instruments" }}
        says={INSTRUMENTS.not_here}
      />
    );
  }
  return <AtWork key={instrument.id} instrument={instrument} defined={defined} />;
}

function AtWork({ instrument, defined }: { instrument: InstrumentShown; defined: Defined }) {
  const checking = useCheck(instrument, defined);
  const { page } = checking;
  if (page.is === "stage") {
    return <StagePage key={page.stage.key} checking={checking} stage={page.stage} />;
  }
  if (page.is === "which") return <WhichPage checking={checking} />;
  if (page.is === "known") return <KnownPage checking={checking} />;
  if (page.is === "water") return <WaterPage checking={checking} />;
  if (page.is === "altitude") return <AltitudePage checking={checking} />;
  return <ResultPage checking={checking} />;
}
