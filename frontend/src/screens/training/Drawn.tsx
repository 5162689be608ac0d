/** One question: what is drawn, what is asked, what was typed so far. */
import { useRef } from "preact/hooks";
import type { Question } from "../../calc/drills.ts";
import { Cup } from "../../parts/Cup.tsx";
import { Dial, heightWithin } from "../../parts/Dial.tsx";
import { LiquidSurface } from "../../parts/LiquidSurface.tsx";
import { NumberShown } from "../../parts/NumberShown.tsx";
import { useRoom } from "../../parts/room.ts";
import { Spoon } from "../../parts/Spoon.tsx";
import { unitWord } from "../../text/numbers.ts";
import { DRILL } from "../../text/skills.ts";
import { drawnWords, placeInWords } from "./asked.ts";
import type { Drilling } from "./use_drill.ts";

const DRAWN_PX = { least: 160, most: 460 };
const SIDES_PX = 24; // of the sheet, left and right

/** Never wider than the screen: a phone would shrink the page and make room for more. */
function bounds(): { least: number; most: number } {
  const wide = document.documentElement.clientWidth - SIDES_PX;
  return { ...DRAWN_PX, most: Math.min(DRAWN_PX.most, Math.floor(heightWithin(wide))) };
}

/** The drawing as large as there is room, then the figure it is read as. */
export function Asked({ drilling }: { drilling: Drilling }) {
  const { question, read, typed } = drilling;
  const part = useRef<HTMLDivElement>(null);
  const height = useRoom(part, bounds());
  if (question === null) return null;
  return (
    <div class="asked" ref={part}>
      <Drawn question={question} height={height} />
      <div class="asked-figure">
        <div>
          <p class="asks">{DRILL.asks(question.shape)}</p>
          <p class="second" role="status">
            {typed.is_in_words ? placeInWords(question) : hintFor(question)}
          </p>
        </div>
        <p>
          <NumberShown amount={read || null} unit={question.unit} basis="counted" size="net" />
        </p>
      </div>
      <Cup class="tell" isChosen={typed.is_in_words} onPress={drilling.tell}>
        {typed.is_in_words ? DRILL.as_drawn : DRILL.in_words}
      </Cup>
    </div>
  );
}

function hintFor({ sort, holds, division, unit }: Question): string {
  return sort === "spoon" ? DRILL.level_is(holds ?? "") : DRILL.each_mark(division, unit);
}

function Drawn({ question, height }: { question: Question; height: number }) {
  const { shape, truth, unit } = question;
  const says = drawnWords(question);
  const drawn = { scale: question, unit: unitWord(unit), at: truth, says, height };
  if (shape === "dial") return <Dial {...drawn} />;
  if (shape === "cylinder") return <LiquidSurface {...drawn} />;
  return <Spoon shape={shape} percent={truth} says={says} height={height} />;
}
