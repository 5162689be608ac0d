/** One line: its vessel, its lots in order of use, the instrument that can tell. */
import { Cup } from "../../parts/Cup.tsx";
import { Vessel } from "../../parts/Tube.tsx";
import { FITNESS } from "../../text/fitness.ts";
import { againstWords, DESPITE } from "../../text/holds.ts";
import { LAY_OUT } from "../../text/lay_out.ts";
import {
  type BatchLine,
  type InstrumentShown,
  instrumentsInUse,
  lineName,
} from "../common/batches.ts";
import { today } from "../common/edge.ts";
import { standingOf } from "../common/instruments.ts";
import { amountText, lifeShown, quantityText } from "../common/lots.ts";
import { canTell, instrumentsFor } from "../weigh-in/which_instrument.ts";
import { type Proposal, proposalFor, type TakenLot, usedUp } from "./proposal.ts";

interface LineProps {
  line: BatchLine;
  kitchen: string | null;
  /** `lot` names one that is here though the record has none left of it. */
  onTick: (lot?: string) => void;
}

/** The whole row is the target; it keeps its place when ticked. */
export function LineToLayOut({ line, kitchen, onTick }: LineProps) {
  const isDone = line.laid_out.length > 0;
  const proposal = proposalFor(line, today());
  const inside = (
    <>
      <Vessel isFull={isDone} />
      <span class="lay-out-what">
        <span class="rec lay-out-name">{lineName(line)}</span>
        {isDone ? <LaidOut line={line} /> : <Proposed proposal={proposal} />}
        {line.in_base === null && <Missing proposal={proposal} />}
        <span class="second">{scaleWords(line, kitchen)}</span>
      </span>
      <span class="lay-out-amount">
        <b>{quantityText(line.planned)}</b>
        <span class="second">{isDone ? LAY_OUT.laid_out : LAY_OUT.to_do}</span>
      </span>
    </>
  );
  if (!isDone && proposal.taken.length === 0) {
    return (
      <li id={`field-${line.line}`} class="lay-out-none">
        <p class="lay-out-line">{inside}</p>
        <div class="key-row">
          {[...proposal.against.map(({ lot }) => lot.lot), ...usedUp(line)].map((lot) => (
            <Cup key={lot} onPress={() => onTick(lot)}>
              <span class="code">{lot}</span> {LAY_OUT.all_the_same}
            </Cup>
          ))}
          <Cup href="#/receive">{LAY_OUT.receive}</Cup>
        </div>
      </li>
    );
  }
  return (
    <li id={`field-${line.line}`}>
      <Cup class="lay-out-line" isChosen={isDone} onPress={() => onTick()}>
        {inside}
      </Cup>
    </li>
  );
}

function LaidOut({ line }: { line: BatchLine }) {
  return (
    <>
      {line.laid_out.map((code) => (
        <b key={code} class="lay-out-lot code">
          {code}
        </b>
      ))}
    </>
  );
}

function Proposed({ proposal }: { proposal: Proposal }) {
  return (
    <>
      {proposal.taken.map((taken) => (
        <LotLine key={taken.lot.lot} taken={taken} isOne={proposal.taken.length === 1} />
      ))}
      {proposal.against.map(({ lot, reasons }) => (
        <span key={lot.lot} class="lay-out-lot">
          <span class="shout">{DESPITE.says(lot.lot, againstWords(reasons))}</span>
        </span>
      ))}
    </>
  );
}

/** What the lots here do not give; it stays until the line is weighed in. */
function Missing({ proposal: { taken, missing } }: { proposal: Proposal }) {
  if (missing === null) return null;
  return (
    <span class="lay-out-lot">
      <span class="shout">
        {taken.length === 0
          ? LAY_OUT.no_lot
          : LAY_OUT.missing(amountText(missing.amount, missing.unit))}
      </span>
    </span>
  );
}

function LotLine({ taken, isOne }: { taken: TakenLot; isOne: boolean }) {
  const { lot } = taken;
  const life = lifeShown(lot.life, lot.made_on, today());
  const takes = amountText(taken.takes, lot.unit);
  const words = [isOne ? "" : takes, taken.is_emptied ? LAY_OUT.empties : ""].filter(Boolean);
  return (
    <span class="lay-out-lot">
      <b class="code">{lot.lot}</b> <span class="second">{words.join(", ")}</span>
      {life.state === "soon" && (
        <>
          <br />
          <span class="shout">{life.words}</span>
        </>
      )}
    </span>
  );
}

function scaleWords(line: BatchLine, kitchen: string | null): string {
  if (line.planned?.unit === "pc") return "";
  const [best] = instrumentsFor(line, instrumentsInUse(kitchen));
  return best !== undefined && canTell(best, line) ? weighOn(best) : LAY_OUT.no_scale;
}

/** Said before one lays out, too: it can be used, and the reading will say so. */
function weighOn(scale: InstrumentShown): string {
  const { is } = standingOf(scale.id);
  const words = LAY_OUT.weigh_on(scale.name);
  return is === "failed" || is === "due" ? `${words}, ${FITNESS[is]}` : words;
}
